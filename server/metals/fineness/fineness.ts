import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { type Message, message } from "../../../calibration/message.ts";
import { fractionAtDensity, type Law, reach, uOfLaw } from "./fraction-at-density.ts";
import { cornersOf, type GoldColour, type RestOfAlloy, restByColour } from "./rest-of-alloy.ts";

/** Lowest and highest fineness, in ‰ by mass. */
export interface PermilleRange {
  low: number;
  high: number;
}

/** What a density says about fineness. */
export interface Fineness {
  precious: "Au" | "Ag";
  /** by the law with excess terms, with measurement, law and freedom of the rest: the interval to use */
  corrected: PermilleRange;
  /** the same before it is cut to 0 to 1000 ‰: for sums, which are cut at their end */
  uncut: PermilleRange;
  /** by plainly added volumes, with measurement and freedom only: what a table without excess terms would say */
  plain: PermilleRange;
  /** width in ‰ that each cause would leave on its own */
  widths: { measurement: number; law: number; freedom: number };
  /** false when no alloy of this kind has such a density; the ranges are then empty of meaning */
  possible: boolean;
  message: Message;
}

/** Linear expansion used to bring a density to 20 °C, 10⁻⁶/K: the library's value for gold alloys and for silver-copper. */
const expansion = { Au: 16.5, Ag: 19 } as const;

/** Coverage factor implied by the stated interval. */
const coverage = (m: MeasuredDensity) => (m.intervalGPerCm3[1] - m.intervalGPerCm3[0]) / 2 / m.uGPerCm3;

/**
 * Fineness of a silver-copper alloy from its density at `celsius`. Slope: 0.1 % of density is 6 ‰ of silver, so density
 * shows that a piece is silver-like and hardly which standard. Other metals in the rest (zinc, nickel) void it.
 */
export function silverFineness(measured: MeasuredDensity, celsius = 20): Fineness {
  return finenessOver("Ag", measured, [{ Cu: 1 }], celsius, message("fineness.rest.copper"));
}

/**
 * Fineness of a gold-silver-copper(-zinc) alloy from its density at `celsius`, over every ratio of the rest that the
 * colour allows. White gold is refused by its type: palladium and nickel break the series.
 */
export function goldFineness(measured: MeasuredDensity, colour: GoldColour, celsius = 20): Fineness {
  return finenessOver("Au", measured, cornersOf(colour), celsius, restByColour[colour].rest);
}

/** Factor that brings a density at `celsius` to 20 °C for gold or silver alloy. */
export function to20(precious: "Au" | "Ag", celsius: number): number {
  return 1 + 3 * expansion[precious] * 1e-6 * (celsius - 20);
}

function finenessOver(
  precious: "Au" | "Ag",
  measured: MeasuredDensity,
  rests: RestOfAlloy[],
  celsius: number,
  rest: Message,
): Fineness {
  const warmer = to20(precious, celsius);
  const [low, high] = measured.intervalGPerCm3.map((x) => x * warmer) as [number, number];
  const value = measured.valueGPerCm3 * warmer;
  const k = coverage(measured);
  const ranges = rests.map((one) => {
    const at = (density: number, law: Law) => fractionAtDensity(precious, density, one, law);
    const middle = at(value, "corrected");
    const law = k * uOfLaw(precious, middle, one);
    const down = Math.hypot(middle - at(low, "corrected"), law);
    const up = Math.hypot(at(high, "corrected") - middle, law);
    return {
      middle,
      law,
      low: middle - down,
      high: middle + up,
      plain: [at(low, "plain"), at(high, "plain")],
    };
  });
  const middles = ranges.map((r) => r.middle);
  const [lightest, densest] = reach(precious, rests, "corrected");
  const uncut = {
    low: 1000 * Math.min(...ranges.map((r) => r.low)),
    high: 1000 * Math.max(...ranges.map((r) => r.high)),
  };
  const corrected = permille(uncut.low / 1000, uncut.high / 1000);
  const possible = high >= lightest * 0.995 && low <= densest * 1.003;
  return {
    precious,
    corrected,
    uncut,
    plain: permille(Math.min(...ranges.map((r) => r.plain[0]!)), Math.max(...ranges.map((r) => r.plain[1]!))),
    widths: {
      measurement: 1000 * Math.max(...rests.map((one) => width(precious, low, high, one))),
      law: 2000 * Math.max(...ranges.map((r) => r.law)),
      freedom: 1000 * (Math.max(...middles) - Math.min(...middles)),
    },
    possible,
    message: possible
      ? message("fineness.lies-between", {
          precious: named[precious],
          rest,
          low_permille: Math.floor(corrected.low),
          high_permille: Math.ceil(corrected.high),
        })
      : message("fineness.impossible", {
          precious: named[precious],
          rest,
          low_g_cm3: lightest,
          high_g_cm3: densest,
        }),
  };
}

function width(precious: string, low: number, high: number, rest: RestOfAlloy): number {
  return (
    fractionAtDensity(precious, high, rest, "corrected") - fractionAtDensity(precious, low, rest, "corrected")
  );
}

function permille(low: number, high: number): PermilleRange {
  return { low: 1000 * Math.max(0, low), high: 1000 * Math.min(1, high) };
}

/** The precious metal as it stands inside a sentence. */
const named = {
  Au: message("fineness.precious.gold"),
  Ag: message("fineness.precious.silver"),
} as const;
