import { mean } from "../../calibration/mean.ts";
import { message } from "../../calibration/message.ts";
import { atLeast, type CheckedBy, type CheckResult, type Dof, sampleDeviation } from "./check.ts";

/** How well stirred crushed ice of distilled water holds 0 °C, as a standard uncertainty [from memory: a few mK when made with care]. */
const iceBathCelsius = 0.01;

export interface ThermometerFound {
  /** to be added to what the thermometer shows, °C */
  correctionCelsius: number;
  /** standard uncertainty of a corrected reading at that temperature, °C */
  uCelsius: number;
  dof: Dof;
  /** where it was compared, °C */
  atCelsius: number;
}

export interface IcePointTest {
  /** what the thermometer shows in crushed ice and water, °C, settled */
  readingsCelsius: readonly number[];
  /** last place the thermometer shows, °C */
  resolutionCelsius: number;
  /** largest error to pass, °C; 0.5 when left out (0.01 % of a density at 20 °C, common practice) */
  mostCelsius?: number;
}

/** The ice point: 0.0 °C in crushed ice of distilled water. Throws Refusal below three readings. */
export function icePoint(test: IcePointTest, checked: CheckedBy): CheckResult<ThermometerFound> {
  atLeast(3, test.readingsCelsius);
  const found = correctionFrom(
    test.readingsCelsius.map((reading) => -reading),
    test.resolutionCelsius,
    iceBathCelsius,
    0,
  );
  return judged("ice-point", found, test.mostCelsius ?? 0.5, checked);
}

export interface ThermometerComparison {
  /** both thermometers side by side in stirred water, °C */
  pairs: readonly { ownCelsius: number; referenceCelsius: number }[];
  resolutionCelsius: number;
  /** standard uncertainty of the other thermometer, °C */
  referenceUCelsius: number;
  /** largest disagreement to pass, °C; 1 when left out (common practice) */
  mostCelsius?: number;
}

/** Comparison with a second thermometer in the same water. Throws Refusal below three pairs. */
export function thermometerComparison(
  test: ThermometerComparison,
  checked: CheckedBy,
): CheckResult<ThermometerFound> {
  atLeast(3, test.pairs);
  const found = correctionFrom(
    test.pairs.map(({ ownCelsius, referenceCelsius }) => referenceCelsius - ownCelsius),
    test.resolutionCelsius,
    test.referenceUCelsius,
    mean(test.pairs.map(({ referenceCelsius }) => referenceCelsius)),
  );
  return judged("thermometer", found, test.mostCelsius ?? 1, checked);
}

/** Mean correction; its u from the scatter, the last place shown (twice: now and in use) and the reference. */
function correctionFrom(
  differences: readonly number[],
  resolution: number,
  referenceU: number,
  atCelsius: number,
): ThermometerFound {
  const scatter = sampleDeviation(differences) / Math.sqrt(differences.length);
  const uCelsius = Math.hypot(scatter, resolution / Math.sqrt(6), referenceU);
  const dof = scatter === 0 ? null : (differences.length - 1) * (uCelsius / scatter) ** 4;
  return { correctionCelsius: mean(differences), uCelsius, dof, atCelsius };
}

function judged(
  kind: "ice-point" | "thermometer",
  found: ThermometerFound,
  most: number,
  checked: CheckedBy,
): CheckResult<ThermometerFound> {
  const error = -found.correctionCelsius;
  const passed = Math.abs(error) <= most;
  return {
    ...checked,
    kind,
    passed,
    says: message("bench-check.thermometer.found", {
      place: kind === "ice-point" ? "ice" : "beside",
      error_celsius: Math.abs(error),
      side: error < 0 ? "low" : "high",
      u_celsius: found.uCelsius,
      passed: String(passed),
      limit_celsius: most,
    }),
    todo: passed
      ? message("bench-check.thermometer.passed", { correction_celsius: found.correctionCelsius })
      : message(`bench-check.${kind}.failed`),
    found,
  };
}
