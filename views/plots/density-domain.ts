import type { Band } from "./bands.tsx";
import type { DensityPlot } from "./density-plot.ts";

/** The whole axis, g/cm³: up to just above osmium and iridium. */
export const wholeAxis = [0, 23] as const;

/** So much of the value to either side is worth seeing beside a claim or an interval that is narrower. */
const leastReach = 0.015;

/**
 * The part of the axis that matters: claim, interval or expected width, and the ends of bands near them. A band that runs
 * far beyond goes on outside.
 */
export function domainOf({
  measured,
  expected,
  bands,
  claimId,
  domain,
}: DensityPlot): readonly [number, number] {
  if (domain) return domain;
  const claim = bands.find(({ id }) => id === claimId);
  const core = [
    ...(claim ? [claim.low, claim.high] : []),
    ...(measured ? [measured.value - 4 * measured.u, measured.value + 4 * measured.u] : []),
    ...(expected ? [expected.value - expected.halfWidth, expected.value + expected.halfWidth] : []),
  ];
  const ends = (list: readonly Band[]) => list.flatMap(({ low, high }) => [low, high]);
  const middle = core.length > 0 ? core : ends(bands);
  if (middle.length === 0) return wholeAxis;
  const [least, most] = [Math.min(...middle), Math.max(...middle)];
  const reach = Math.max(most - least, leastReach * most);
  const near = ends(bands).filter((end) => end > least - reach && end < most + reach);
  const [low, high] = [Math.min(least, ...near), Math.max(most, ...near)];
  const margin = Math.max((high - low) * 0.06, 0.02);
  return [Math.max(0, low - margin), high + margin];
}
