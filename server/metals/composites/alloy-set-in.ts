import { Refusal } from "../../../calibration/refusal.ts";
import { type FinenessSaid, saidBy } from "../fineness/family-fineness.ts";
import type { FineParts } from "../fineness/fine-parts.ts";
import { fineSum } from "../fineness/fine-sum.ts";
import { preciousElement } from "../fineness/precious-element.ts";
import type { Metal } from "../metal.ts";
import { shareOf } from "../share-of.ts";
import { massesOfTwo, type Uncertain } from "./two-bodies.ts";

/** Masses of an alloy and of what it is set in, g, and the fine metal that the alloy holds if it is what it is claimed. */
export interface AlloySetIn {
  alloyG: readonly [low: number, high: number];
  bodyG: readonly [low: number, high: number];
  /** null for an alloy of no precious metal */
  fineness: FinenessSaid | null;
}

/**
 * Masses of a claimed alloy and of a lighter body it is set in, such as gold in quartz, at a confidence. The density of
 * the alloy lies anywhere in the band of its claim and its fineness anywhere its claim allows: a freedom and no
 * uncertainty, so that the masses run over both ends of it. Refuses what massesOfTwo refuses, and a body that is not
 * lighter than every alloy of the claim.
 */
export function alloySetIn(
  whole: { massG: Uncertain; density: Uncertain },
  alloy: Metal,
  body: Uncertain,
  confidence: number,
): AlloySetIn {
  const { low, high } = alloy.densityGPerCm3;
  if (body.value >= low)
    throw new Refusal("composite.refusal.body-not-lighter", { body_g_cm3: body.value, alloy_g_cm3: low });
  const at = (value: number) => massesOfTwo(whole, { value, u: 0 }, body).firstG;
  // the denser the alloy, the less of it is needed; a whole within the band may be the alloy alone
  const [least, most] = [at(high), at(Math.min(high, Math.max(low, whole.density.value)))];
  const held = (from: number, to: number): FineParts => {
    const [lowG, highG] = [endOf(least, from), endOf(most, to)];
    return {
      low: lowG,
      high: highG,
      expected: endOf(
        { value: (least.value + most.value) / 2, u: Math.max(least.u, most.u) },
        (from + to) / 2,
      ),
      freedom_g: (highG.middle_g - lowG.middle_g) / Math.sqrt(12),
      most_g: whole.massG.value,
    };
  };
  const all = fineSum([held(1, 1)], confidence);
  const element = preciousElement(alloy);
  const massG = whole.massG.value;
  return {
    alloyG: [all.lowG, all.highG],
    bodyG: [massG - all.highG, massG - all.lowG],
    fineness: element ? saidBy(element, held(...shareOf(alloy, element)), massG, confidence) : null,
  };
}

/** What is set in one kind of stone shares its density, so that all of it adds end by end. */
const endOf = ({ value, u }: Uncertain, share: number) => ({
  middle_g: share * value,
  common_g: share * u,
  own_g: 0,
  law_g: 0,
});
