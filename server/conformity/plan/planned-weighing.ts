import type { DensityResult } from "../../../calibration/density-result.ts";
import type { Measurement, Weighing } from "../../../calibration/measurement.ts";

/** A weighing that has not been made yet. */
export interface PlannedWeighing {
  /** id of the metal the piece is said to be */
  claim: string;
  /** of one piece */
  massG: number;
  method: "hung" | "displaced" | "flask";
  /** like pieces weighed together */
  pieces: number;
  /** one step of the display */
  readabilityG: number;
  /** of one dry reading; half a step when absent */
  repeatabilityG?: number;
  /** of one immersed or risen reading; the dry one with bubbles and meniscus when absent */
  immersedRepeatabilityG?: number;
  linearityG?: number;
  wireMm?: number;
  /** of the water; 20 when absent */
  celsius?: number;
  /** standard uncertainty of the thermometer; 0.5 when absent */
  uCelsius?: number;
  confidence: number;
}

/** The evaluation a plan asks for its uncertainty: the very one that will evaluate the real weighing. */
export type Evaluate = (measurement: Measurement) => DensityResult;

/** Scatter that bubbles and the meniscus add to a careful immersion, g (common practice: about 1 mg). */
const wetScatterG = 0.001;
/** Scatter that topping up and wiping a flask adds, g (common practice: about 2 mg with a capillary stopper). */
const fillingScatterG = 0.002;
/** Two fillings by careful hands differ by about this in temperature, °C (common practice). */
const uFlaskWarmerC = 0.1;
/** Usual flasks, mL; the pieces may take half of one. */
const flasksMl = [10, 25, 50, 100, 250, 500, 1000, 2000] as const;

/** The smallest usual flask that pieces of this volume leave half free, mL. */
export function flaskFor(piecesCm3: number): number {
  return flasksMl.find((ml) => ml >= 2 * piecesCm3) ?? 2 * Math.ceil(piecesCm3);
}

/** Scatter of one reading as a share of the display's step (common practice for a sound balance). */
const scatterPerStep = 0.5;
const air = { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 } as const;

/** The readings a piece of the given density would give, evaluated as a measurement. Throws what `evaluate` throws. */
export function expectedResult(plan: PlannedWeighing, gPerCm3: number, evaluate: Evaluate): DensityResult {
  const dryG = plan.massG * plan.pieces;
  // the first guess of the liquid's density only finds the liquid's density
  const guess = evaluate(measurementOf(plan, dryG, dryG / gPerCm3));
  const [liquid, airDensity] = [guess.liquidGPerCm3, guess.airKgPerM3 / 1000];
  const displacedG = (dryG * (liquid - airDensity)) / (gPerCm3 - airDensity);
  return evaluate(measurementOf(plan, dryG, displacedG));
}

/** More decimals than any balance shows: a plan asks for the uncertainty, not for the rounding of one display. */
const text = (grams: number) => grams.toFixed(7);

function measurementOf(plan: PlannedWeighing, dryG: number, displacedG: number): Measurement {
  const repeatability = plan.repeatabilityG ?? scatterPerStep * plan.readabilityG;
  const scatter = plan.method === "flask" ? fillingScatterG : wetScatterG;
  return {
    dry: { readings: [text(dryG)], unit: "g" },
    weighing: weighingOf(plan.method, dryG, displacedG),
    liquid: {
      kind: "water",
      temperature: { celsius: plan.celsius ?? 20, uCelsius: plan.uCelsius ?? 0.5 },
      purity: "distilled",
    },
    air,
    balance: {
      readabilityGrams: plan.readabilityG,
      repeatabilityGrams: repeatability,
      immersedRepeatabilityGrams: plan.immersedRepeatabilityG ?? Math.hypot(repeatability, scatter),
      linearityGrams: plan.linearityG ?? 0,
    },
    hanger: { wireMillimetres: plan.wireMm ?? 0 },
    bubbleAllowanceMg: 0,
    pieces: plan.pieces,
    confidence: plan.confidence,
  };
}

function weighingOf(method: PlannedWeighing["method"], dryG: number, displacedG: number): Weighing {
  const series = (grams: number) => ({ readings: [text(grams)], unit: "g" as const });
  if (method === "hung") return { method, immersed: series(dryG - displacedG) };
  if (method === "displaced") return { method, rise: series(displacedG) };
  // the glass is on the balance both times and falls out of the difference; its water stands for its load
  const fullG = flaskFor(displacedG);
  return {
    method,
    full: series(fullG),
    withPiece: series(fullG + dryG - displacedG),
    liquidGrams: fullG,
    warmerCelsius: 0,
    uWarmerCelsius: uFlaskWarmerC,
  };
}
