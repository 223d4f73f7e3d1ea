import type { DensityPlot } from "./density-plot.ts";

/** Everything not excluded, the claim, the interval and the nearest neighbour on either side, with a margin. */
export function domainOf({ measured, bands, claimId, domain }: DensityPlot): readonly [number, number] {
  if (domain) return domain;
  const near = bands.filter((band) => band.notExcluded !== false || band.id === claimId);
  const ends = near.flatMap(({ low, high }) => [low, high]);
  if (measured) {
    ends.push(measured.value - 4 * measured.u, measured.value + 4 * measured.u);
    const lower = Math.max(
      ...bands
        .filter((band) => band.notExcluded === false && band.high < measured.value)
        .map(({ high }) => high),
    );
    const upper = Math.min(
      ...bands
        .filter((band) => band.notExcluded === false && band.low > measured.value)
        .map(({ low }) => low),
    );
    const far = 0.12 * measured.value; // a neighbour further away would squeeze the curve to a needle
    if (measured.value - lower < far) ends.push(lower - 0.05);
    if (upper - measured.value < far) ends.push(upper + 0.05);
  }
  const finite = ends.filter(Number.isFinite);
  if (finite.length === 0) return [0, 23];
  const low = Math.min(...finite);
  const high = Math.max(...finite);
  const margin = Math.max((high - low) * 0.06, 0.02);
  return [Math.max(0, low - margin), high + margin];
}
