import { keysOf } from "../../../calibration/keyed.ts";
import { type Message, message } from "../../../calibration/message.ts";

/** One way to share out what is not the precious metal: fractions of the rest, adding up to 1. */
export type RestOfAlloy = Readonly<Record<string, number>>;

/** Colours that name a range of recipes of yellow-metal gold. White golds hold palladium or nickel and are refused. */
export type GoldColour = "any" | "yellow" | "pink" | "red" | "green";

interface RestRange {
  silver: readonly [number, number];
  zinc: readonly [number, number];
  /** what the rest may be, in a message */
  rest: Message;
}

/**
 * Silver's and zinc's share of the rest for each colour; copper takes what is left. A colour is a range of recipes,
 * never one: the ranges hold the library's recipes of that colour (some printed, see their sources) and are otherwise
 * common practice.
 */
export const restByColour: Readonly<Record<GoldColour, RestRange>> = {
  any: { silver: [0, 1], zinc: [0, 0.2], rest: message("fineness.rest.any") },
  yellow: { silver: [0.09, 0.7], zinc: [0, 0.16], rest: message("fineness.rest.yellow") },
  pink: { silver: [0.05, 0.3], zinc: [0, 0.1], rest: message("fineness.rest.pink") },
  red: { silver: [0, 0.1], zinc: [0, 0.05], rest: message("fineness.rest.red") },
  green: { silver: [0.75, 1], zinc: [0, 0.1], rest: message("fineness.rest.green") },
};

export const goldColours = keysOf(restByColour);

/** The corner recipes of a colour's range; the fineness at a density is extreme at one of them. */
export function cornersOf(colour: GoldColour): RestOfAlloy[] {
  const { silver, zinc } = restByColour[colour];
  const corners: RestOfAlloy[] = [];
  for (const ag of silver)
    for (const wanted of zinc) {
      const zn = Math.min(wanted, 1 - ag);
      corners.push({ Ag: ag, Cu: 1 - ag - zn, Zn: zn });
    }
  return corners;
}
