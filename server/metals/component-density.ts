import { z } from "zod";
import { message, type Param } from "../../calibration/message.ts";
import { codeIn } from "./catalogue-code.ts";
import componentRows from "./data/components.json" with { type: "json" };
import { elements } from "./elements.ts";
import { figure } from "./sourced-figure.ts";

/** Density of one component of a mixture at 20 °C, g/cm³, with a standard uncertainty. */
export interface ComponentDensity {
  gPerCm3: number;
  uGPerCm3: number;
  /** its name in a message */
  called: Param;
}

const density = z.number().min(0.5).max(23);
const file = z.strictObject({
  components: z.array(
    z.strictObject({
      symbol: z.string(),
      called: z.string(),
      g_cm3: figure(density),
      u_g_cm3: figure(z.number().positive()),
    }),
  ),
});

/** Components that are no metal of their own on a bench, but occur inside one. */
const others = file
  .parse(componentRows)
  .components.map(({ symbol, called, g_cm3, u_g_cm3 }): [string, ComponentDensity] => [
    symbol,
    {
      gPerCm3: g_cm3.value,
      uGPerCm3: u_g_cm3.value,
      called: message(codeIn(called, "components.json")),
    },
  ]);

/** Handbooks round to three or four figures, so no element is taken as better known than this share of its density. */
const leastRelativeU = 0.0003;

const known = new Map<string, ComponentDensity>(others);
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
