import { massWords } from "./amounts.ts";
import {
  atLeast,
  type CheckedBy,
  type CheckResult,
  mean,
  sampleDeviation,
  scatterPerReadability,
  shownGrams,
} from "./check.ts";
import { probabilityOfRatio } from "./f-ratio.ts";

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
 * Standard deviation of repeated weighings of one load. Throws RangeError below six weighings. Passes when the
 * deviation is within its limit and, where a house value is given, not larger than it by an F-test at 1 %.
 */
export function repeatability(test: RepeatabilityTest, checked: CheckedBy): CheckResult<RepeatabilityFound> {
  const { condition, readabilityGrams, own } = test;
  atLeast(fewestWeighings, test.readings, "A repeatability test");
  const readings = test.readings.map(shownGrams);
  const sGrams = sampleDeviation(readings);
  const dof = readings.length - 1;
  const most = test.mostGrams ?? mostPerReadability * readabilityGrams;
  const floor = scatterPerReadability * readabilityGrams;
  const chance = own && probabilityOfRatio((sGrams / own.sGrams) ** 2, dof, own.dof);
  const withinLimit = sGrams <= most;
  const passed = withinLimit && (chance === undefined || chance >= 0.01);
  const s = `s = ${massWords(sGrams)} from ${readings.length} weighings`;
  return {
    ...checked,
    kind: condition === "dry" ? "repeatability" : "immersed-repeatability",
    passed,
    says: passed
      ? `${s}, within ${massWords(most)}.` +
        (sGrams < floor ? ` The display hides the rest: budgets use ${massWords(floor)}.` : "")
      : withinLimit
        ? `${s}: more than the house's ${massWords(own?.sGrams ?? 0)} by an F-test (chance ${((chance ?? 0) * 100).toFixed(2)} %).`
        : `${s}: more than the ${massWords(most)} it may be.`,
    todo: passed
      ? "Record it; it goes into every later budget of this balance."
      : condition === "dry"
        ? "Look for draught, vibration, a balance not warmed up or not level; then repeat the whole test."
        : "Clean the wire, add a trace of wetting agent, come to the mark from the same side; then repeat the whole test.",
    found: {
      loadGrams: mean(readings),
      sGrams,
      repeatabilityGrams: Math.max(sGrams, floor),
      dof,
      weighings: readings.length,
      ...(chance === undefined ? {} : { chanceUnderOwn: chance }),
    },
  };
}
