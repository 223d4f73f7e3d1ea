import type { DensityResult } from "../../../calibration/density-result.ts";
import type { Purity } from "../../../calibration/liquid.ts";
import { measure } from "../../../calibration/measure.ts";
import type { Measurement } from "../../../calibration/measurement.ts";
import { seededRandom } from "../../../calibration/random.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { type MethodName, methods } from "../../methods/index.ts";

/** A weighing that has not been made yet. */
export interface PlannedWeighing {
  /** id of the metal the piece is said to be */
  claim: string;
  /** of one piece */
  massG: number;
  method: MethodName;
  /** like pieces weighed together */
  pieces: number;
  /** one step of the display */
  readabilityG: number;
  /** of one dry reading; half a step when absent */
  repeatabilityG?: number;
  /** of one immersed or risen reading; the dry one with bubbles and meniscus when absent */
  immersedRepeatabilityG?: number;
  /** readings of each load, the piece lifted in between; 1 when absent */
  repeats?: number;
  linearityG?: number;
  wireMm?: number;
  /** of the water; 20 when absent */
  celsius?: number;
  /** standard uncertainty of the thermometer; 0.5 when absent */
  uCelsius?: number;
  /** what the bench states of its water and its place: distilled, without solids and bubbles, air of 1.2 kg/m³ when absent */
  purity?: Purity;
  dissolvedSolidsMgPerL?: number;
  bubbleAllowanceMg?: number;
  altitudeMetres?: number;
  confidence: number;
}

/** The evaluation a plan asks for its uncertainty: the very one that will evaluate the real weighing. */
export type Evaluate = (measurement: Measurement) => DensityResult;

/** As a statement evaluates a weighing, with its interval from the whole distribution where a plain one is not good enough. */
export const asStated: Evaluate = (measurement) => measure(measurement, seededRandom(1));

/** Scatter of one reading as a share of the display's step (common practice for a sound balance). */
const scatterPerStep = 0.5;
const air = { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 } as const;

/** The readings a piece of the given density would give, evaluated as a measurement. Throws what `evaluate` throws. */
export function expectedResult(plan: PlannedWeighing, gPerCm3: number, evaluate: Evaluate): DensityResult {
  const dryG = plan.massG * plan.pieces;
  // the first guess of the liquid's density only finds the liquid's density
  const guess = evaluate(measurementOf(plan, dryG, dryG / gPerCm3));
  const [liquid, airDensity] = [guess.liquidGPerCm3 ?? 0, guess.airKgPerM3 / 1000];
  const displacedG = (dryG * (liquid - airDensity)) / (gPerCm3 - airDensity);
  return evaluate(measurementOf(plan, dryG, displacedG));
}

/** More decimals than any balance shows: a plan asks for the uncertainty, not for the rounding of one display. */
const text = (grams: number) => grams.toFixed(7);

function measurementOf(plan: PlannedWeighing, dryG: number, displacedG: number): Measurement {
  const repeatability = plan.repeatabilityG ?? scatterPerStep * plan.readabilityG;
  const ofMean = 1 / Math.sqrt(plan.repeats ?? 1);
  const foreseen = methods[plan.method].plan;
  if (!foreseen) throw new Refusal("plan.method.not-foreseen", {}, "method");
  const { weighing, scatterGrams } = foreseen;
  return {
    dry: { readings: [text(dryG)], unit: "g" },
    weighing: weighing(dryG, displacedG),
    liquid: {
      kind: "water",
      temperature: { celsius: plan.celsius ?? 20, uCelsius: plan.uCelsius ?? 0.5 },
      purity: plan.purity ?? "distilled",
      ...(plan.dissolvedSolidsMgPerL !== undefined && {
        dissolvedSolidsMgPerL: plan.dissolvedSolidsMgPerL,
      }),
    },
    air: plan.altitudeMetres === undefined ? air : { kind: "altitude", metres: plan.altitudeMetres },
    balance: {
      readabilityGrams: plan.readabilityG,
      repeatabilityGrams: ofMean * repeatability,
      immersedRepeatabilityGrams:
        ofMean * (plan.immersedRepeatabilityG ?? Math.hypot(repeatability, scatterGrams)),
      linearityGrams: plan.linearityG ?? 0,
    },
    hanger: { wireMillimetres: plan.wireMm ?? 0 },
    bubbleAllowanceMg: plan.bubbleAllowanceMg ?? 0,
    pieces: plan.pieces,
    confidence: plan.confidence,
  };
}
