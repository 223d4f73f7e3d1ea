import { componentDensity } from "./component-density.ts";
import { excessTerm, unknownExcessShare } from "./excess-terms.ts";

/** Mass fractions of a mixture by component; they must add up to 1. */
export type MassFractions = Readonly<Record<string, number>>;

/** Density of a mixture, both ways, in g/cm³ at 20 °C. */
export interface MixtureDensity {
  /** 1/ρ = Σ wᵢ/ρᵢ: volumes add */
  plainGPerCm3: number;
  /** 1/ρ = Σ wᵢ/ρᵢ + Σ Bᵢⱼ wᵢ wⱼ: with the excess terms */
  correctedGPerCm3: number;
  /** standard uncertainty of the corrected value, from the components and the excess terms */
  uGPerCm3: number;
}

/** Fractions may miss 1 by this much, the rounding of a recipe printed to 0.1 %; they are then scaled to 1. */
const roundingOfRecipes = 0.0051;

/**
 * Density of sound metal of the given composition by additive volumes, plain and corrected by the excess terms of its
 * pairs. Fractions add up to 1 within 0.5 %.
 * Throws RangeError for fractions that do not, for a negative one, or for an unknown component.
 */
export function mixtureDensity(fractions: MassFractions): MixtureDensity {
  const parts = scaledToOne(fractions);
  let volume = 0;
  let variance = 0;
  for (const [symbol, w] of parts) {
    const { gPerCm3, uGPerCm3 } = componentDensity(symbol);
    volume += w / gPerCm3;
    variance += ((w / gPerCm3 ** 2) * uGPerCm3) ** 2;
  }
  const excess = excessVolume(parts);
  const corrected = 1 / (volume + excess.cm3PerG);
  return {
    plainGPerCm3: 1 / volume,
    correctedGPerCm3: corrected,
    uGPerCm3: corrected ** 2 * Math.sqrt(variance + excess.uCm3PerG ** 2),
  };
}

/**
 * Excess specific volume Σ Bᵢⱼ wᵢ wⱼ of a composition in cm³/g, with its standard uncertainty. A pair without a term
 * counts as 0, uncertain by a share of the two volumes.
 */
function excessVolume(parts: readonly (readonly [string, number])[]): { cm3PerG: number; uCm3PerG: number } {
  let cm3PerG = 0;
  let variance = 0;
  for (const [place, [a, wa]] of parts.entries())
    for (const [b, wb] of parts.slice(place + 1)) {
      const term = excessTerm(a, b);
      const u =
        term?.uCm3PerG ??
        unknownExcessShare / Math.sqrt(componentDensity(a).gPerCm3 * componentDensity(b).gPerCm3);
      cm3PerG += (term?.bCm3PerG ?? 0) * wa * wb;
      variance += (u * wa * wb) ** 2;
    }
  return { cm3PerG, uCm3PerG: Math.sqrt(variance) };
}

function scaledToOne(fractions: MassFractions): [string, number][] {
  const parts = Object.entries(fractions);
  for (const [symbol, w] of parts)
    if (!(w >= 0)) throw new RangeError(`Mass fraction ${w} of ${symbol}: right is a share from 0 to 1.`);
  const total = parts.reduce((sum, [, w]) => sum + w, 0);
  if (Math.abs(total - 1) > roundingOfRecipes)
    throw new RangeError(
      `Mass fractions add up to ${+total.toPrecision(6)}, right is 1: enter shares, not per cent or per mille, and name the rest of the alloy.`,
    );
  return parts.map(([symbol, w]) => [symbol, w / total]);
}
