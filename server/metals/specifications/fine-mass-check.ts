import { Refusal } from "../../../calibration/refusal.ts";

/** Rounding a stated figure may hide: half a unit of its last decimal. */
function halfLastPlace(text: string): number {
  const decimals = /\.(\d*)$/.exec(text)?.[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/**
 * Mass times fineness must be the stated fine mass, within what rounding of the three stated figures allows. All three as
 * decimal text, masses in grams, fineness in ‰, so that 7.3224 and 7.32 are told apart. Returns the computed fine mass, g.
 * Refuses with both numbers when they do not go together.
 */
export function checkFineMass(massG: string, finenessPermille: string, fineMassG: string): number {
  const [mass, fineness, stated] = [massG, finenessPermille, fineMassG].map(Number) as [
    number,
    number,
    number,
  ];
  for (const typed of [massG, finenessPermille, fineMassG])
    if (!(Number(typed) > 0)) throw new Refusal("specification.fine.not-above-zero", { typed });
  if (fineness > 1000)
    throw new Refusal("specification.fine.above-1000", {
      fineness_permille: { decimal: finenessPermille },
    });
  const computed = (mass * fineness) / 1000;
  const slack =
    halfLastPlace(fineMassG) +
    (halfLastPlace(massG) * fineness + halfLastPlace(finenessPermille) * mass) / 1000;
  if (Math.abs(computed - stated) > slack)
    throw new Refusal("specification.fine.contradicts", {
      mass_g: { decimal: massG },
      fineness_permille: { decimal: finenessPermille },
      computed_g: computed,
      stated_g: { decimal: fineMassG },
    });
  return computed;
}
