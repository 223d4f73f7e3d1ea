import { Refusal } from "../../calibration/refusal.ts";

export const weightClasses = ["E2", "F1", "F2", "M1"] as const;
export type WeightClass = (typeof weightClasses)[number];

/**
 * Maximum permissible errors in mg, OIML R 111-1:2004 table 1 [from memory: compare with the document before relying
 * on it where money changes hands].
 */
const permissibleMg: readonly (readonly [grams: number, E2: number, F1: number, F2: number, M1: number])[] = [
  [1, 0.03, 0.1, 0.3, 1],
  [2, 0.04, 0.12, 0.4, 1.2],
  [5, 0.05, 0.16, 0.5, 1.6],
  [10, 0.06, 0.2, 0.6, 2],
  [20, 0.08, 0.25, 0.8, 2.5],
  [50, 0.1, 0.3, 1, 3],
  [100, 0.16, 0.5, 1.6, 5],
  [200, 0.3, 1, 3, 10],
  [500, 0.8, 2.5, 8, 25],
  [1000, 1.6, 5, 16, 50],
];

/** The nominal values the table holds, g. */
export const nominalGrams: readonly number[] = permissibleMg.map(([grams]) => grams);

interface Calibrated {
  conventionalGrams: number;
  /** k = 2 */
  expandedGrams: number;
}

/** A weight used for checking: known by its class, or by the value and expanded uncertainty of its calibration. */
export type CheckWeight =
  | { nominalGrams: number; class: WeightClass; calibrated?: never }
  | { nominalGrams: number; class?: WeightClass; calibrated: Calibrated };

/** Largest error a weight of that class may have, g. Throws Refusal for a nominal value the table lacks. */
export function permissibleErrorGrams(weight: { nominalGrams: number; class: WeightClass }): number {
  const row = permissibleMg.find(([grams]) => grams === weight.nominalGrams);
  if (row === undefined)
    throw new Refusal("bench-check.weight.no-class", {
      weight_g: weight.nominalGrams,
      known_g: nominalGrams,
    });
  return row[1 + weightClasses.indexOf(weight.class)]! / 1000;
}

/**
 * Conventional mass of a check weight, its standard uncertainty and how far it may be off at most, g: from its
 * calibration (U/2 and U), else the nominal value with the permissible error as rectangular half-width.
 */
export function conventional(weight: CheckWeight): { grams: number; uGrams: number; offMostGrams: number } {
  if (weight.calibrated) {
    const { conventionalGrams, expandedGrams } = weight.calibrated;
    return { grams: conventionalGrams, uGrams: expandedGrams / 2, offMostGrams: expandedGrams };
  }
  const most = permissibleErrorGrams(weight);
  return { grams: weight.nominalGrams, uGrams: most / Math.sqrt(3), offMostGrams: most };
}
