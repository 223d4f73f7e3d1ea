import type { Message } from "../../calibration/message.ts";
import type { Provenance } from "./provenance.ts";

/** What a magnet shows: nothing, a faint drift of a hung piece, or a pull that a hand feels. */
export const magnetisms = ["none", "weak", "strong"] as const;
export type Magnetism = (typeof magnetisms)[number];

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
export const likelihoods = ["common", "possible", "rare"] as const;
export type Likelihood = (typeof likelihoods)[number];

/** Mass fraction of one component: nominal, lowest, highest; null where no limit is known. */
export type Fraction = readonly [nominal: number, low: number | null, high: number | null];

/** Density of sound metal at 20 °C in g/cm³; low and high span composition and sources, and are not an uncertainty. */
export interface DensityBand {
  nominal: number;
  low: number;
  high: number;
}

/** The figures of a metal that have a provenance of their own. */
export type Figure =
  | "composition"
  | "limits"
  | "nominal"
  | "low"
  | "high"
  | "expansion"
  | "magnetism"
  | "conductivityLow"
  | "conductivityHigh"
  | "sound"
  | "elasticModulus"
  | "poissonRatio"
  | "colour"
  | "likelihood";

/** One metal, alloy, fineness family or two-bodied piece of the library. */
export interface Metal {
  id: string;
  /** as its owner typed it; every other metal is named by its id, in each language */
  ownName?: string;
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
  /** where each figure comes from; none for a figure that is not known */
  provenance: Readonly<Partial<Record<Figure, Provenance>>>;
  /** densities that other sources print or other rules give, g/cm³ at 20 °C unless the source says otherwise */
  otherDensities: readonly { gPerCm3: number; provenance: Provenance }[];
  /** what else to know; text that an owner typed stays as typed */
  notes: readonly (Message | string)[];
  /** by what share a sound piece may be lighter than its alloy: pores of castings, solder, cold work; absent: none */
  lighterBy?: number;
  /** id of the fineness family whose stamp it may carry */
  fineness?: string;
  /** how often it is met as a core; absent: hardly ever; never: another metal of the library stands for it */
  asCore?: "common" | "possible" | "never";
  /** put around others as a skin; the lower number is tried first */
  asSkin?: number;
  /** a fineness family lists the recipes it groups; its band runs over all of them */
  recipes?: readonly string[];
  /** a made-up piece: what it is put together from, in place of a name */
  made?: Message;
}
