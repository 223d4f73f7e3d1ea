import { componentDensity } from "./component-density.ts";
import type { DensityBand, Metal } from "./metal.ts";
import { type MassFractions, mixtureDensity } from "./mixture.ts";

/** What the mixture law says of a metal's composition range, beside what the library's band says. */
export interface BandByMixture {
  plain: DensityBand;
  corrected: DensityBand;
  /** standard uncertainty of the corrected nominal value, g/cm³ */
  uGPerCm3: number;
}

/**
 * Density band of the composition range by the mixture law, plain and corrected: the lightest and the densest
 * composition that the limits allow. Limits that are not known hold the component at its nominal share.
 */
export function bandByMixture(metal: Metal): BandByMixture {
  const nominal = mixtureDensity(normalised(metal));
  const light = mixtureDensity(extreme(metal, "light"));
  const dense = mixtureDensity(extreme(metal, "dense"));
  const band = (of: "plainGPerCm3" | "correctedGPerCm3"): DensityBand => ({
    nominal: nominal[of],
    low: Math.min(light[of], nominal[of]),
    high: Math.max(dense[of], nominal[of]),
  });
  return { plain: band("plainGPerCm3"), corrected: band("correctedGPerCm3"), uGPerCm3: nominal.uGPerCm3 };
}

/** Nominal fractions scaled to 1: standards leave minor elements unnamed. */
function normalised(metal: Metal): MassFractions {
  const parts = Object.entries(metal.composition).map(([of, [w]]) => [of, w] as const);
  const total = parts.reduce((sum, [, w]) => sum + w, 0);
  return Object.fromEntries(parts.map(([of, w]) => [of, w / total]));
}

/** Fills up from the lower limits with the lightest (or densest) components first until the shares make 1. */
function extreme(metal: Metal, towards: "light" | "dense"): MassFractions {
  const shares: Record<string, number> = {};
  const parts = Object.entries(metal.composition).map(([of, [w, low, high]]) => ({
    of,
    low: low ?? w,
    high: high ?? w,
    gPerCm3: componentDensity(of).gPerCm3,
  }));
  for (const part of parts) shares[part.of] = part.low;
  let left = 1 - parts.reduce((sum, part) => sum + part.low, 0);
  const order = parts.sort((a, b) => (towards === "light" ? a.gPerCm3 - b.gPerCm3 : b.gPerCm3 - a.gPerCm3));
  for (const { of, low, high } of order) {
    const taken = Math.min(Math.max(left, 0), high - low);
    shares[of] = (shares[of] ?? 0) + taken;
    left -= taken;
  }
  const total = Object.values(shares).reduce((sum, w) => sum + w, 0);
  return Object.fromEntries(Object.entries(shares).map(([of, w]) => [of, w / total]));
}
