import type { Metal } from "../metals/metal.ts";

/**
 * Rough worth of a gram, as a power of ten above copper's class. Only the order is used: a stand-in is worth making
 * when it is worth clearly less than what it stands in for. Common practice; prices move, the order has not for long.
 */
const worthPower: Readonly<Record<string, number>> = {
  Au: 4,
  Ir: 4,
  Rh: 4,
  Os: 4,
  Pt: 3.5,
  Pd: 3.5,
  Ru: 3,
  Re: 2.3,
  Ag: 2,
};
const baseMetalPower = 0;

/** Rough worth of a gram of the metal, in units of base metal. For comparing two metals, never for a price. */
export function worthPerGram(metal: Metal): number {
  let worth = 0;
  for (const of in metal.composition)
    worth += metal.composition[of]![0] * 10 ** (worthPower[of] ?? baseMetalPower);
  return worth;
}

/** True when passing `other` off as `claimed` would pay: it is worth less, by more than the slack of a fineness. */
export function worthPassingOff(other: Metal, claimed: Metal): boolean {
  return worthPerGram(other) < worthPerGram(claimed) * 0.998;
}
