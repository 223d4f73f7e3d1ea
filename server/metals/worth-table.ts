import { z } from "zod";
import { keyed } from "../../calibration/keyed.ts";
import rows from "./data/worth.json" with { type: "json" };
import { figure } from "./sourced-figure.ts";

/** How often something else is met among pieces offered as one metal; purpose-made: tuned to the density of it. */
export const occurrences = ["common", "occasional", "rare", "purpose-made"] as const;
export type Occurrence = (typeof occurrences)[number];

/**
 * Rough worth of a gram by element, in units of a base metal, for comparing two metals and never for a price: a
 * substitute is worth making when it is worth clearly less than what it passes for. Prices move, the order has not for
 * long (common practice).
 */
export interface WorthTable {
  /** by symbol; what it does not name is a base metal, worth 1 */
  of: Readonly<Record<string, number>>;
  /** of a thousand pieces offered as one metal, so many are something else of this occurrence */
  otherInThousand: Readonly<Record<Occurrence, number>>;
}

/** What a worth may be: below that of a base metal nothing is made up, above it no metal is. */
export const worthRange = { from: 1, to: 1_000_000 } as const;
/** Pieces in a thousand of one occurrence; all four together leave most pieces genuine. */
export const inThousandRange = { from: 0, to: 240 } as const;

const within = ({ from, to }: { from: number; to: number }) => z.number().min(from).max(to);

/** An owner's own figures of the table; a figure that is left out is the built-in one. */
export const ownWorth = z.record(z.string(), within(worthRange));
export const ownInThousand = z.partialRecord(z.enum(occurrences), within(inThousandRange));

const read = z
  .strictObject({
    others: figure(within(worthRange)),
    elements: z.array(z.strictObject({ symbol: z.string(), worth: figure(within(worthRange)) })),
    other_in_thousand: z.record(z.enum(occurrences), figure(within(inThousandRange))),
  })
  .parse(rows);

/** The table as built. */
export const builtInWorth: WorthTable = {
  of: Object.fromEntries(read.elements.map(({ symbol, worth }) => [symbol, worth.value])),
  otherInThousand: keyed(occurrences, (one) => read.other_in_thousand[one].value),
};

/** Worth of a gram of an element, in units of a base metal. */
export function worthOf(symbol: string, table: WorthTable): number {
  return table.of[symbol] ?? 1;
}
