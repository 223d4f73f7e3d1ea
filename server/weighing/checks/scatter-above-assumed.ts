import { ownScatterFrom } from "../../../calibration/repeats.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { type Repeated, repeatedIn } from "./repeated-readings.ts";
import { scattering } from "./scatter-contradicts.ts";

/**
 * Readings of one load, of a balance whose scatter nobody stated, that scatter more than was assumed: the result takes
 * what was seen (balance.ts), and a further reading tells whether the balance scatters so or one of them is wrong. From four
 * readings on their own scatter is known, and only what the assumption contradicts is told.
 */
export const scatterAboveAssumed: ProcedureCheck = {
  code: "check.scatter-above-assumed",
  detect(situation) {
    const [worst] = repeatedIn(situation)
      .filter(({ assumed }) => assumed)
      .filter(scattersMore)
      .toSorted((a, b) => a.found.scatter.p - b.found.scatter.p);
    return worst && scattering(worst);
  },
};

const scattersMore = ({ readings, found, statedGrams }: Repeated) =>
  found.scatter.verdict !== "agree" || (readings.length < ownScatterFrom && found.s > statedGrams);
