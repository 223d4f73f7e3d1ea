import { probabilityOfRatio } from "../../calibration/f-ratio.ts";
import { message } from "../../calibration/message.ts";
import { decimalsOf, density } from "./amounts.ts";
import { atLeast, type CheckedBy, type CheckResult, sampleDeviation } from "./check.ts";
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
 * one-sided F-test at 95 %. A larger scatter fails the training, not the bench. Throws Refusal below six runs.
 */
export function trainee(test: TraineeTest, checked: CheckedBy): CheckResult<TraineeFound> {
  const { runsGPerCm3, own } = test;
  atLeast(fewestWeighings, runsGPerCm3);
  const sGPerCm3 = sampleDeviation(runsGPerCm3);
  const dof = runsGPerCm3.length - 1;
  const ratio = (sGPerCm3 / own.sGPerCm3) ** 2;
  const chance = probabilityOfRatio(ratio, dof, own.dof);
  const passed = chance >= leastProbability;
  const decimals = decimalsOf(Math.min(sGPerCm3 || own.sGPerCm3, own.sGPerCm3));
  return {
    ...checked,
    kind: "trainee",
    passed,
    says: message("bench-check.trainee.found", {
      trainee: test.trainee,
      piece: test.piece,
      s: density(sGPerCm3, decimals),
      count: runsGPerCm3.length,
      own: density(own.sGPerCm3, decimals),
      dof: own.dof,
      ratio,
      chance_percent: chance * 100,
      passed: String(passed),
    }),
    todo: message(passed ? "bench-check.trainee.passed" : "bench-check.trainee.failed"),
    found: { sGPerCm3, dof, ratio, chance },
  };
}
