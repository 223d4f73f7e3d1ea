import { normalBelow } from "../../calibration/normal.ts";
import { type AcceptanceInterval, highOf, lowOf, type ToleranceInterval } from "./tolerance.ts";

/** What is known about pieces before any of them is measured: a probability density over a finite range. */
export interface PriorDensity {
  from: number;
  to: number;
  at(value: number): number;
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

/** Simpson panels; 4000 hold JCGM 106's ball-bearing numbers to 1e-8. */
const panels = 4000;

/**
 * Global risks of an acceptance interval for pieces drawn from a prior and measured with a normal standard uncertainty u.
 * The integral runs over the prior's range piecewise, so that the limits fall on panel ends.
 */
export function globalRisk(
  prior: PriorDensity,
  u: number,
  tolerance: ToleranceInterval,
  acceptance: AcceptanceInterval,
): GlobalRisk {
  if (!(u > 0)) throw new RangeError(`Standard uncertainty ${u}: right is a number above zero.`);
  const accepted = (value: number) =>
    acceptance === "empty"
      ? 0
      : normalBelow((highOf(acceptance) - value) / u) - normalBelow((lowOf(acceptance) - value) / u);
  const outside = (f: (value: number) => number) =>
    integral(f, prior.from, Math.max(prior.from, lowOf(tolerance))) +
    integral(f, Math.min(prior.to, highOf(tolerance)), prior.to);
  const inside = (f: (value: number) => number) =>
    integral(f, Math.max(prior.from, lowOf(tolerance)), Math.min(prior.to, highOf(tolerance)));
  return {
    nonConforming: outside((x) => prior.at(x)),
    consumers: outside((x) => prior.at(x) * accepted(x)),
    producers: inside((x) => prior.at(x) * (1 - accepted(x))),
  };
}

function integral(f: (x: number) => number, from: number, to: number): number {
  if (!(to > from)) return 0;
  const step = (to - from) / panels;
  let sum = f(from) + f(to);
  for (let i = 1; i < panels; i++) sum += f(from + i * step) * (i % 2 === 1 ? 4 : 2);
  return (sum * step) / 3;
}
