import { message, type Param } from "../../calibration/message.ts";
import { elements } from "./recipes.ts";

/** Density of one component of a mixture at 20 °C, g/cm³, with a standard uncertainty. */
export interface ComponentDensity {
  gPerCm3: number;
  uGPerCm3: number;
  /** its name in a message */
  called: Param;
}

/** Components that are no metal of their own on a bench, but occur inside one. All from memory. */
const others: Readonly<Record<string, ComponentDensity>> = {
  WC: { gPerCm3: 15.63, uGPerCm3: 0.05, called: message("composite.component.wc") },
  polymer: { gPerCm3: 1.2, uGPerCm3: 0.06, called: message("composite.component.polymer") },
  C: { gPerCm3: 2.26, uGPerCm3: 0.05, called: message("composite.component.c") },
  P: { gPerCm3: 1.82, uGPerCm3: 0.1, called: message("composite.component.p") },
};

/** Handbooks round to three or four figures, so no element is taken as better known than this share of its density. */
const leastRelativeU = 0.0003;

const known = new Map<string, ComponentDensity>(Object.entries(others));
for (const { id, densityGPerCm3: band, composition } of elements) {
  const symbol = Object.keys(composition)[0] ?? id;
  const spread = (band.high - band.low) / Math.sqrt(12);
  known.set(symbol, {
    gPerCm3: band.nominal,
    uGPerCm3: Math.max(spread, leastRelativeU * band.nominal),
    called: { metal: id },
  });
}

/** The symbols a mixture may be made of. */
export const componentSymbols: readonly string[] = [...known.keys()];

/**
 * Density of a component by its symbol, such as "Au", "WC" or "polymer". The uncertainty is that of the spread between
 * handbooks taken as rectangular. Throws RangeError for an unknown symbol.
 */
export function componentDensity(symbol: string): ComponentDensity {
  const found = known.get(symbol);
  if (!found)
    throw new RangeError(
      `No density for component "${symbol}". Right: one of ${componentSymbols.join(", ")}.`,
    );
  return found;
}
