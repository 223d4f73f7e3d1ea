import type { Colour, Metal } from "../metals/metal.ts";
import { couldLook, recipesOf } from "./evidence/appearance.ts";

/**
 * Rough worth of a gram, as a power of ten above copper's class. Only the order is used: a stand-in is worth making
 * when it is worth clearly less than what it stands in for. Common practice; prices move, the order has not for long.
 */
const worthPower: Readonly<Record<string, number>> = {
  Au: 4,
  Ir: 4,
  Rh: 4,
  Os: 4,
  Pt: 3.5,
  Pd: 3.5,
  Ru: 3,
  Re: 2.3,
  Ag: 2,
};
const baseMetalPower = 0;

/** Rough worth of a gram of the metal, in units of base metal. For comparing two metals, never for a price. */
export function worthPerGram(metal: Metal): number {
  let worth = 0;
  for (const of in metal.composition)
    worth += metal.composition[of]![0] * 10 ** (worthPower[of] ?? baseMetalPower);
  return worth;
}

/** True when passing `other` off as `claimed` would pay: it is worth less, by more than the slack of a fineness. */
export function worthPassingOff(other: Metal, claimed: Metal): boolean {
  return worthPerGram(other) < worthPerGram(claimed) * 0.998;
}

/** Skins that are put on to look like something dearer, by the worth of their metal: silver, gold, copper. */
const skins: readonly { colour: Colour; element: string }[] = [
  { colour: "white", element: "Ag" },
  { colour: "yellow", element: "Au" },
  { colour: "red", element: "Cu" },
];

/** True when somebody would put a skin of the colour around it: the metal of such a skin is dearer (common practice). */
export function canBeCoatedAs(colour: Colour, metal: Metal): boolean {
  return skins.some(
    (skin) =>
      couldLook(colour, skin.colour) &&
      worthPerGram(metal) < 10 ** (worthPower[skin.element] ?? baseMetalPower),
  );
}

/** True when a piece of the metal can look as the claim does, by its own colour or under a skin. */
export function canLookLike(metal: Metal, claimed: Metal): boolean {
  return recipesOf(claimed).some(({ colour }) =>
    recipesOf(metal).some((recipe) => couldLook(colour, recipe.colour) || canBeCoatedAs(colour, recipe)),
  );
}
