import type { Message } from "../../calibration/message.ts";

/** What a magnet shows: nothing, a faint drift of a hung piece, or a pull that a hand feels. */
export type Magnetism = "none" | "weak" | "strong";

/** Colour of the clean metal, under any skin. Common practice; words a person at a counter would use. */
export const colours = [
  "white",
  "grey",
  "yellow",
  "greenish-yellow",
  "reddish-yellow",
  "pink",
  "red",
  "reddish-grey",
] as const;
export type Colour = (typeof colours)[number];

/** How likely a bench is to meet a whole piece of it: common, possible, or rare. A judgment (common practice). */
export type Likelihood = "common" | "possible" | "rare";

/** Mass fraction of one component: nominal, lowest, highest; null where no limit is known. */
export type Fraction = readonly [nominal: number, low: number | null, high: number | null];

/** Density of sound metal at 20 °C in g/cm³; low and high span composition and sources, and are not an uncertainty. */
export interface DensityBand {
  nominal: number;
  low: number;
  high: number;
}

/** One metal, alloy, fineness family or two-bodied piece of the library. */
export interface Metal {
  id: string;
  name: string;
  family: string;
  composition: Readonly<Record<string, Fraction>>;
  densityGPerCm3: DensityBand;
  /** linear, 10⁻⁶ per kelvin near 20 °C */
  expansionPerMillionK: number | null;
  magnetism: Magnetism;
  /** lowest and highest electrical conductivity, % IACS at 20 °C */
  conductivityIacsPercent: readonly [number, number] | null;
  /** longitudinal bulk speed of sound, the one a thickness gauge uses; never the thin-rod speed */
  soundMPerS: number | null;
  elasticModulusGPa: number | null;
  poissonRatio: number | null;
  colour: Colour;
  likelihood: Likelihood;
  source: string;
  /** true when the density or the composition was seen in the source named; other fields may still be from memory */
  verified: boolean;
  notes?: string;
  /** a fineness family lists the recipes it groups; its band runs over all of them */
  recipes?: readonly string[];
  /** a made-up piece: what it is put together from, in place of a name */
  made?: Message;
}
