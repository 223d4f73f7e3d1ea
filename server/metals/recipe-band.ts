import { type AlloyState, lighterBy } from "./alloy-state.ts";
import { type CompositionRange, cornersOf } from "./composition-range.ts";
import type { DensityBand } from "./metal.ts";
import { type MassFractions, mixtureDensity } from "./mixture.ts";

/** Standard uncertainties of the mixture law that a band is wider by on either side. */
const coverage = 2;

/**
 * Density band of everything a recipe allows, g/cm³ at 20 °C: the extremes of its composition range by the mixture law
 * with excess terms, wider by twice the law's own uncertainty, and on the light side by what its states leave in a sound
 * piece (pores of castings, solder, cold work).
 */
export function recipeBand(
  usual: MassFractions,
  range: CompositionRange,
  states: readonly AlloyState[],
): DensityBand {
  const nominal = mixtureDensity(usual).correctedGPerCm3;
  const ends = cornersOf(range).map((corner) => {
    const { correctedGPerCm3: density, uGPerCm3: u } = mixtureDensity(corner);
    return [density - coverage * u, density + coverage * u] as const;
  });
  return {
    nominal: places(nominal),
    low: places(Math.min(...ends.map(([low]) => low)) * (1 - lighterBy(states))),
    high: places(Math.max(...ends.map(([, high]) => high))),
  };
}

/** A band is stated to a thousandth of a g/cm³. */
const places = (gPerCm3: number) => Math.round(gPerCm3 * 1000) / 1000;
