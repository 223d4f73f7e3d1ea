import { shortest } from "./amounts.ts";
import { atLeast, type CheckedBy, type CheckResult, sampleDeviation } from "./check.ts";
import { probabilityOfRatio } from "./f-ratio.ts";
import { fewestWeighings } from "./repeatability.ts";

/** One-sided: a scatter that the house's own would show in fewer than one of twenty such series is called larger. */
const leastProbability = 0.05;

export interface TraineeTest {
  trainee: string;
  /** the reference piece, by the name on its box */
  piece: string;
  /** density of each run through the whole procedure, g/cm³ */
  runsGPerCm3: readonly number[];
  /** the house's own standard deviation of that piece's density, with its degrees of freedom */
  own: { sGPerCm3: number; dof: number };
}

export interface TraineeFound {
  sGPerCm3: number;
  dof: number;
  /** s² of the trainee over s² of the house */
  ratio: number;
  /** chance of a ratio this large if the trainee scattered as the house does */
  chance: number;
}

/**
 * Whether somebody new scatters as the house does: their s of the reference piece against the house's own by a
 * one-sided F-test at 95 %. A larger scatter fails the training, not the bench. Throws RangeError below six runs.
 */
export function trainee(test: TraineeTest, checked: CheckedBy): CheckResult<TraineeFound> {
  const { runsGPerCm3, own } = test;
  atLeast(fewestWeighings, runsGPerCm3, "A trainee's test");
  const sGPerCm3 = sampleDeviation(runsGPerCm3);
  const dof = runsGPerCm3.length - 1;
  const ratio = (sGPerCm3 / own.sGPerCm3) ** 2;
  const chance = probabilityOfRatio(ratio, dof, own.dof);
  const passed = chance >= leastProbability;
  const says =
    `${test.trainee}: s = ${shortest(sGPerCm3, 2)} g/cm³ from ${runsGPerCm3.length} runs of ${test.piece}, ` +
    `the house ${shortest(own.sGPerCm3, 2)} g/cm³ with ${own.dof} degrees of freedom. ` +
    `F = ${shortest(ratio, 3)}, chance ${(chance * 100).toFixed(1)} %: `;
  return {
    ...checked,
    kind: "trainee",
    passed,
    says: `${says}${passed ? "no larger than the house by an F-test at 95 %." : "larger than the house by an F-test at 95 %."}`,
    todo: passed
      ? "Record it. A small scatter does not show a wrong mean: compare it on the reference density chart."
      : "Go through the procedure together: bubbles, the depth of the hanger, drying, patience. Then ten more runs.",
    found: { sGPerCm3, dof, ratio, chance },
  };
}
