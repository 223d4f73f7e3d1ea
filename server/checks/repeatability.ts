import { probabilityOfRatio } from "../../calibration/f-ratio.ts";
import { mean } from "../../calibration/mean.ts";
import { message } from "../../calibration/message.ts";
import { mass, massBesideLimit } from "./amounts.ts";
import {
  atLeast,
  type CheckedBy,
  type CheckResult,
  sampleDeviation,
  scatterPerReadability,
  shownGrams,
} from "./check.ts";

/** Fewer weighings leave s too vague to build budgets on. */
export const fewestWeighings = 6;

/** Common practice: a balance worth its readability repeats within three last places. */
const mostPerReadability = 3;

export interface RepeatabilityTest {
  /** "dry": on the pan; "immersed": hung in water and re-immersed each time */
  condition: "dry" | "immersed";
  /** readings of one load, zeroed in between, in g, as shown */
  readings: readonly string[];
  readabilityGrams: number;
  /** largest standard deviation to pass, g; three times the readability when left out */
  mostGrams?: number;
  /** the house's own pooled standard deviation, to compare with */
  own?: { sGrams: number; dof: number };
}

export interface RepeatabilityFound {
  loadGrams: number;
  /** standard deviation of the readings as they are */
  sGrams: number;
  /** the one for budgets: never below what the display's roundings hide, 0.41 d */
  repeatabilityGrams: number;
  dof: number;
  weighings: number;
  /** chance of a scatter this large if nothing but the house's own were at work */
  chanceUnderOwn?: number;
}

/**
 * Standard deviation of repeated weighings of one load. Throws Refusal below six weighings. Passes when the
 * deviation is within its limit and, where a house value is given, not larger than it by an F-test at 1 %.
 */
export function repeatability(test: RepeatabilityTest, checked: CheckedBy): CheckResult<RepeatabilityFound> {
  const { condition, readabilityGrams, own } = test;
  atLeast(fewestWeighings, test.readings);
  const readings = test.readings.map(shownGrams);
  const sGrams = sampleDeviation(readings);
  const dof = readings.length - 1;
  const most = test.mostGrams ?? mostPerReadability * readabilityGrams;
  const floor = scatterPerReadability * readabilityGrams;
  const probability = own && probabilityOfRatio((sGrams / own.sGrams) ** 2, dof, own.dof);
  const withinLimit = sGrams <= most;
  const passed = withinLimit && (probability === undefined || probability >= 0.01);
  const kind = condition === "dry" ? "repeatability" : "immersed-repeatability";
  const { found: s, limit } = massBesideLimit(sGrams, withinLimit && !passed ? (own?.sGrams ?? 0) : most);
  return {
    ...checked,
    kind,
    passed,
    says: message("bench-check.repeatability.found", {
      s,
      count: readings.length,
      outcome: !withinLimit ? "above" : !passed ? "own" : sGrams < floor ? "hidden" : "within",
      limit,
      floor: mass(floor),
      chance_percent: (probability ?? 1) * 100,
    }),
    todo: message(passed ? "bench-check.repeatability.passed" : `bench-check.${kind}.failed`),
    found: {
      loadGrams: mean(readings),
      sGrams,
      repeatabilityGrams: Math.max(sGrams, floor),
      dof,
      weighings: readings.length,
      ...(probability === undefined ? {} : { chanceUnderOwn: probability }),
    },
  };
}
