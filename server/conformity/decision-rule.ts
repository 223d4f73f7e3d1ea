import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { normalBelow, normalQuantile } from "../../calibration/normal.ts";
import { type AcceptanceInterval, highOf, lowOf, type ToleranceInterval } from "./tolerance.ts";

/**
 * How a measured value is compared with limits, agreed before measuring (ISO/IEC 17025:2017 7.1.3; JCGM 106:2012;
 * ILAC-G8:09/2019):
 * - "simple": accepted when the value lies inside the limits, guard band w = 0;
 * - "guard-band": accepted only when it lies inside by w = r·U (r = 1 is the usual choice; r < 0 guards rejection);
 * - "pass-and-conditional": ILAC-G8's four answers, with w = r·U on both sides of each limit.
 */
export interface DecisionRule {
  kind: (typeof ruleKinds)[number];
  /** guard band as a multiple r of the expanded uncertainty U; unused by "simple" */
  multiple: number;
}

export const ruleKinds = ["simple", "guard-band", "pass-and-conditional"] as const;

export const simpleAcceptance: DecisionRule = { kind: "simple", multiple: 0 };
export const guardBandOfU: DecisionRule = { kind: "guard-band", multiple: 1 };
export const passAndConditional: DecisionRule = { kind: "pass-and-conditional", multiple: 1 };

export type Verdict = "pass" | "conditional-pass" | "conditional-fail" | "fail";

/** The verdict under a rule, with the probability behind it. */
export interface Decision {
  rule: DecisionRule;
  limits: ToleranceInterval;
  verdict: Verdict;
  acceptance: AcceptanceInterval;
  /** probability that the true value lies inside the limits, from the measured distribution */
  conformanceProbability: number;
  /** probability that this verdict is wrong for this piece: specific risk, JCGM 106 */
  specificRisk: number;
  /** highest probability of a wrong acceptance that the rule allows, at the worst accepted value of a normal distribution */
  worstAcceptanceRisk: number;
}

/** Acceptance interval for the limits and U: limits moved inwards by w = r·U; "empty" when nothing is left between them. */
export function acceptanceInterval(
  tolerance: ToleranceInterval,
  expandedU: number,
  rule: DecisionRule,
): AcceptanceInterval {
  if (!(expandedU >= 0))
    throw new RangeError(`Expanded uncertainty ${expandedU}: right is a number of zero or more.`);
  const w = rule.kind === "simple" ? 0 : rule.multiple * expandedU;
  const low = lowOf(tolerance) + w;
  const high = highOf(tolerance) - w;
  if (low > high) return "empty";
  return {
    ...(tolerance.low === undefined ? {} : { low }),
    ...(tolerance.high === undefined ? {} : { high }),
  };
}

const within = (value: number, interval: AcceptanceInterval) =>
  interval !== "empty" && value >= lowOf(interval) && value <= highOf(interval);

/**
 * Conformance probability of a measured distribution, p_c = P(T_L ≤ Y ≤ T_U): JCGM 106:2012 clause 7, from the
 * distribution itself, so that it holds for Monte Carlo as well.
 */
export function conformanceProbability(
  tolerance: ToleranceInterval,
  probabilityBelow: (x: number) => number,
): number {
  const below = tolerance.high === undefined ? 1 : probabilityBelow(tolerance.high);
  const under = tolerance.low === undefined ? 0 : probabilityBelow(tolerance.low);
  return Math.min(1, Math.max(0, below - under));
}

/** Distance to a single limit, in standard uncertainties, that gives a conformance probability p: JCGM 106 Table 1. */
export function distanceForConformance(p: number): number {
  return normalQuantile(p);
}

/**
 * The decision on a measured density against limits in g/cm³. U is half the stated interval; the probabilities come
 * from the measured distribution. Pure: the same rule and measurement always give the same verdict.
 */
export function decide(
  measured: MeasuredDensity,
  tolerance: ToleranceInterval,
  rule: DecisionRule,
): Decision {
  const [low, high] = measured.intervalGPerCm3;
  const expandedU = (high - low) / 2;
  const acceptance = acceptanceInterval(tolerance, expandedU, rule);
  const verdict = verdictFor(measured.valueGPerCm3, tolerance, expandedU, rule);
  const p = conformanceProbability(tolerance, (x) => measured.probabilityBelow(x));
  const passes = verdict === "pass" || verdict === "conditional-pass";
  const specificRisk = passes ? 1 - p : p;
  return {
    rule,
    limits: tolerance,
    verdict,
    acceptance,
    conformanceProbability: p,
    specificRisk,
    worstAcceptanceRisk: worstRisk(acceptance, tolerance, measured.uGPerCm3),
  };
}

function verdictFor(
  value: number,
  tolerance: ToleranceInterval,
  expandedU: number,
  rule: DecisionRule,
): Verdict {
  if (within(value, acceptanceInterval(tolerance, expandedU, rule))) return "pass";
  if (rule.kind !== "pass-and-conditional") return "fail";
  if (within(value, tolerance)) return "conditional-pass";
  const widened = acceptanceInterval(tolerance, expandedU, { ...rule, multiple: -rule.multiple });
  return within(value, widened) ? "conditional-fail" : "fail";
}

/** 1 − p_c for a normal distribution centred on the acceptance limit where it is largest. */
function worstRisk(acceptance: AcceptanceInterval, tolerance: ToleranceInterval, u: number): number {
  if (acceptance === "empty") return 0;
  const at = (centre: number) => 1 - conformanceProbability(tolerance, normalCentredOn(centre, u));
  const limits = [acceptance.low, acceptance.high].filter((x) => x !== undefined);
  return limits.length === 0 ? 0 : Math.max(...limits.map(at));
}

const normalCentredOn = (centre: number, u: number) => (x: number) => normalBelow((x - centre) / u);
