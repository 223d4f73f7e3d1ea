import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import type { Substitute } from "../metals/composites/substitutes.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { type Occurrence, occurrences } from "../metals/worth-table.ts";
import { bandAt } from "./exclusion.ts";
import { repeatedAmong } from "./repeated.ts";

export const candidateKinds = ["metal", "coated", "cored", "mixed"] as const;

export type CandidateKind = (typeof candidateKinds)[number];

/** What a piece may be: a metal of the library, or a body made of two that reaches the density. */
export interface Candidate {
  metal: Metal;
  kind: CandidateKind;
  occurrence: Occurrence;
  /** of a fineness family, those of its recipes that the density leaves; absent where none of them is */
  recipes?: readonly Metal[];
  /** put together for this very density: it fits as well as anything can */
  tuned?: true;
}

/** How often a whole piece of a metal is met, by its likelihood (common practice). */
export const met = { common: "common", possible: "occasional", rare: "rare" } as const;
/** Bodies of the library whose core is given the density of the metal around it. */
const tuned: ReadonlySet<string> = new Set(["w-core-au", "w-epoxy"]);
const kindsOfTwo: Readonly<Record<string, CandidateKind>> = {
  "w-core-au": "cored",
  "pb-core": "cored",
  "w-epoxy": "mixed",
};

/** A metal or two-bodied piece of the library; a family is met as often as the commonest of its recipes that fits. */
export function candidate(metal: Metal, fitting: readonly Metal[]): Candidate {
  const recipes = metal.recipes ? fitting.filter(({ id }) => metal.recipes?.includes(id)) : [];
  const often = (recipes.length > 0 ? recipes : [metal]).map(({ likelihood }) => met[likelihood]);
  return {
    metal,
    kind: metal.family === "cored-and-plated" ? (kindsOfTwo[metal.id] ?? "coated") : "metal",
    occurrence: tuned.has(metal.id)
      ? "purpose-made"
      : (occurrences.find((one) => often.includes(one as (typeof often)[number])) ?? "rare"),
    ...(recipes.length > 0 && { recipes }),
  };
}

/** A body made of two whose shares or skin its maker chose for this density. */
export function madeCandidate({ kind, as }: Substitute): Candidate {
  return { metal: as, kind: kind === "mixture" ? "mixed" : "cored", occurrence: "purpose-made", tuned: true };
}

/**
 * How well the measured density fits a candidate: the mean probability density of the measured distribution over the
 * candidate's band, 1/(g/cm³). A band that reaches far fits each of its densities less.
 */
export function fitOf(measured: MeasuredDensity, metal: Metal, celsius: number): number {
  const band = bandAt(metal, celsius);
  // a band narrower than this is one density
  const least = measured.uGPerCm3 / 100;
  const widen = Math.max(0, least - (band.high - band.low)) / 2;
  const [low, high] = [band.low - widen, band.high + widen];
  return (measured.probabilityBelow(high) - measured.probabilityBelow(low)) / (high - low);
}

/** Without a recipe whose family is there, and without the second entry of one thing. */
export function distinct(candidates: readonly Candidate[], library: Library): Candidate[] {
  const isRepeated = repeatedAmong(
    candidates.map(({ metal }) => metal.id),
    library,
  );
  return candidates.filter(({ metal }) => !isRepeated(metal.id));
}
