import { normalBelow } from "../../calibration/normal.ts";
import { type AcceptanceInterval, highOf, lowOf, type ToleranceInterval } from "./tolerance.ts";

/**
 * What is known about pieces before any of them is measured (JCGM 106:2012, clause 5): a share of all pieces whose values
 * are spread evenly over a range that has a width. The shares of a prior add up to 1.
 */
export interface PriorPart {
  from: number;
  to: number;
  share: number;
}

/** Risks over many pieces, JCGM 106:2012 clause 9. */
export interface GlobalRisk {
  /** share of pieces that do not conform at all */
  nonConforming: number;
  /** share accepted though they do not conform */
  consumers: number;
  /** share rejected though they do conform */
  producers: number;
}

/** Global risks of an acceptance interval for pieces of a prior, each measured with a normal standard uncertainty u > 0. */
export function globalRisk(
  prior: readonly PriorPart[],
  u: number,
  tolerance: ToleranceInterval,
  acceptance: AcceptanceInterval,
): GlobalRisk {
  if (!(u > 0)) throw new RangeError(`Standard uncertainty ${u}: right is a number above zero.`);
  const risk: GlobalRisk = { nonConforming: 0, consumers: 0, producers: 0 };
  for (const part of prior) {
    const low = Math.min(Math.max(part.from, lowOf(tolerance)), part.to);
    const high = Math.max(Math.min(part.to, highOf(tolerance)), low);
    const [all, inside] = [reach(part.from, part.to), reach(low, high)];
    const passing = accepted(part.from, part.to);
    const passingInside = inside === all ? passing : accepted(low, high);
    const perReach = part.share / all;
    risk.nonConforming += perReach * (all - inside);
    risk.consumers += perReach * (passing - passingInside);
    risk.producers += perReach * (inside - passingInside);
  }
  return risk;

  /** the reach of accepted values, in expectation, among true values spread evenly from a to b */
  function accepted(a: number, b: number): number {
    if (acceptance === "empty" || a === b) return 0;
    return below(highOf(acceptance), a, b, u) - below(lowOf(acceptance), a, b, u);
  }
}

const reach = (a: number, b: number) => b - a;

/** ∫ Φ((limit − x)/u) dx from a to b, by the antiderivative z·Φ(z) + φ(z). */
function below(limit: number, a: number, b: number, u: number): number {
  if (limit === Number.POSITIVE_INFINITY) return b - a;
  if (limit === Number.NEGATIVE_INFINITY) return 0;
  return u * (antiderivative((limit - a) / u) - antiderivative((limit - b) / u));
}

function antiderivative(z: number): number {
  // beyond these the rest is below 1e-17 of a standard deviation
  if (Math.abs(z) > 8.5) return Math.max(0, z);
  return z * normalBelow(z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
