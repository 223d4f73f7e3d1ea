import { z } from "zod";
import excessVolumes from "./data/excess-volumes.json" with { type: "json" };
import type { Provenance } from "./provenance.ts";
import { figure, provenanceOf, sourced } from "./sourced-figure.ts";

/** One excess term: B in cm³/g, so that a pair adds B·wᵢ·wⱼ to the specific volume, and its standard uncertainty. */
export interface ExcessTerm {
  pair: readonly [string, string];
  bCm3PerG: number;
  uCm3PerG: number;
  provenance: Provenance;
  /** published densities it was fitted to or is held against, g/cm³ */
  points: readonly { fractions: Readonly<Record<string, number>>; gPerCm3: number; provenance: Provenance }[];
}

const share = z.number().min(0).max(1);
const file = z.strictObject({
  default_share_of_volumes: figure(share),
  terms: z.array(
    z.strictObject({
      pair: z.tuple([z.string(), z.string()]),
      b_cm3_per_g: figure(z.number()),
      u_cm3_per_g: figure(z.number().positive()),
      points: z.array(sourced({ fractions: z.record(z.string(), share), g_cm3: z.number().positive() })),
    }),
  ),
});

const read = file.parse(excessVolumes);

/**
 * How real alloys depart from the plain mixture law. A positive B makes the alloy lighter than its metals, as ordering
 * does in gold-copper, a negative B denser, as in brass.
 */
export const excessTerms: readonly ExcessTerm[] = read.terms.map((term) => ({
  pair: term.pair,
  bCm3PerG: term.b_cm3_per_g.value,
  uCm3PerG: term.u_cm3_per_g.value,
  provenance: provenanceOf(term.b_cm3_per_g),
  points: term.points.map(({ fractions, g_cm3, ...from }) => ({
    fractions,
    gPerCm3: g_cm3,
    provenance: provenanceOf(from),
  })),
}));

/**
 * Standard uncertainty of B for a pair without a term, as a share of the mean specific volume of the two (geometric):
 * of the pairs with a term hardly one departs by more than twice this.
 */
export const unknownExcessShare: number = read.default_share_of_volumes.value;

const byPair = new Map(excessTerms.map((term) => [[...term.pair].sort().join(), term]));

/** The excess term of a pair in either order, or null where the plain law is used. */
export function excessTerm(a: string, b: string): ExcessTerm | null {
  return byPair.get(a < b ? `${a},${b}` : `${b},${a}`) ?? null;
}
