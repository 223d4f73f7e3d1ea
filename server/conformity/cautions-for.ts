import type { Metal } from "../metals/metal.ts";
import { type Caution, type CautionMoment, cautions } from "./cautions.ts";

/** The cautions of a moment that is not about one metal. */
export function cautionsAt(moment: Exclude<CautionMoment, "metal">): Caution[] {
  return cautions.filter((c) => c.moment === moment);
}

/** The cautions about what the piece may be made of: any metal still alive that can hold the element counts. */
export function cautionsAbout(alive: readonly Metal[]): Caution[] {
  return cautions.filter(({ element }) => {
    if (!element) return false;
    return alive.some((m) => {
      const fraction = m.composition[element.symbol];
      return fraction !== undefined && (fraction[2] ?? fraction[0]) >= element.share;
    });
  });
}
