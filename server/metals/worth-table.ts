import { z } from "zod";
import rows from "./data/worth.json" with { type: "json" };
import { figure } from "./sourced-figure.ts";

/**
 * Rough worth of a gram by element, in units of a base metal, for comparing two metals and never for a price: a
 * substitute is worth making when it is worth clearly less than what it passes for. Prices move, the order has not for
 * long (common practice).
 */
export interface WorthTable {
  /** by symbol; what it does not name is a base metal, worth 1 */
  of: Readonly<Record<string, number>>;
}

/** What a worth may be: below that of a base metal nothing is made up, above it no metal is. */
export const worthRange = { from: 1, to: 1_000_000 } as const;

const worth = z.number().min(worthRange.from).max(worthRange.to);
const read = z
  .strictObject({
    others: figure(worth),
    elements: z.array(z.strictObject({ symbol: z.string(), worth: figure(worth) })),
  })
  .parse(rows);

/** The table as built. */
export const builtInWorth: WorthTable = {
  of: Object.fromEntries(read.elements.map(({ symbol, worth }) => [symbol, worth.value])),
};

/** Worth of a gram of an element, in units of a base metal. */
export function worthOf(symbol: string, table: WorthTable): number {
  return table.of[symbol] ?? 1;
}
