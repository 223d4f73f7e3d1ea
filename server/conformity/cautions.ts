import type { Metal } from "../metals/metal.ts";
import { shareOf } from "../metals/share-of.ts";

/** A metal that harms whoever works on a piece of it; the catalogues hold what to do under `hazard.of`. */
interface Hazard {
  id: "lead" | "cadmium" | "beryllium" | "nickel" | "thallium" | "mercury" | "uranium";
  symbol: string;
  /** told where a metal that is not excluded may hold at least this mass fraction */
  share: number;
}

/**
 * Lead, cadmium and nickel are limited by REACH annex XVII (entries 63, 23, 27); uranium needs a licence in most
 * countries (US 10 CFR 40.13, 40.25). Beryllium, thallium, mercury and the shares: from memory.
 */
const hazards: readonly Hazard[] = [
  { id: "lead", symbol: "Pb", share: 0.01 },
  { id: "cadmium", symbol: "Cd", share: 0.0005 },
  { id: "beryllium", symbol: "Be", share: 0.0005 },
  { id: "nickel", symbol: "Ni", share: 0.02 },
  { id: "thallium", symbol: "Tl", share: 0.0005 },
  { id: "mercury", symbol: "Hg", share: 0.0001 },
  { id: "uranium", symbol: "U", share: 0.01 },
];

/** Hazards of what a piece may be made of: any metal that is not excluded and can hold the element counts. */
export function cautionsAbout(notExcluded: readonly Metal[]): Hazard["id"][] {
  return hazards
    .filter(({ symbol, share }) => notExcluded.some((metal) => shareOf(metal, symbol)[1] >= share))
    .map(({ id }) => id);
}
