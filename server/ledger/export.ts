import { z } from "zod";
import { keysOf } from "../../calibration/keyed.ts";
import { localTime } from "../../calibration/local-time.ts";
import { csvLine } from "./csv.ts";
import type { Entry } from "./entry.ts";
import { kinds } from "./kinds.ts";
import type { Ledger } from "./ledger.ts";

const pageRows = 500;

/** Finished measurements as CSV, of one lot or all, newest first: ISO 8601 dates in UTC and, last, on the clock of the place, decimal point, units in the headings. */
export async function* recordsCsv(
  ledger: Ledger,
  filters: { lot?: string } = {},
  zone = "UTC",
): AsyncGenerator<string> {
  yield csvLine([
    "measured at (ISO 8601 UTC)",
    "bench",
    "subject",
    "ticket",
    "description",
    "claim",
    "lot",
    "operator",
    "mass (g)",
    "density (g/cm3)",
    "expanded uncertainty of density (g/cm3)",
    "finding",
    "voided",
    "amendments",
    "record (SHA-256)",
    "brought by",
    "dry reading",
    "dry (g)",
    "measured at (clock of the place)",
  ]);
  for (let before: number | null | undefined; before !== null; ) {
    const page = await ledger.records({
      filters,
      page: { size: pageRows, ...(before === undefined ? {} : { before }) },
    });
    for (const record of page.records)
      yield csvLine([
        record.at,
        record.bench,
        record.subject,
        record.ticket,
        record.description,
        record.claim,
        record.lot,
        record.operator,
        record.mass_g,
        record.density_g_cm3,
        record.expanded_g_cm3,
        record.state,
        record.voided ? "voided" : "",
        record.amendments,
        record.entry_hash,
        record.customer,
        record.dry,
        record.dry_g,
        onClockOf(zone, record.at),
      ]);
    before = page.next;
  }
}

/** ISO 8601 with the offset of the zone. */
function onClockOf(zone: string, at: string): string {
  const { day, time, offset } = localTime(at, zone);
  return `${day}T${time}${offset}`;
}

/** Every entry as JSON Lines, oldest first; `entrySchema` describes a line. */
export async function* entriesJson(ledger: Ledger): AsyncGenerator<string> {
  for (let after = 0; ; ) {
    const entries: Entry[] = await ledger.entries({ after, limit: pageRows });
    for (const entry of entries) yield `${JSON.stringify(entry)}\n`;
    const last = entries.at(-1);
    if (!last) return;
    after = last.seq;
  }
}

const hex64 = z.string().regex(/^[0-9a-f]{64}$/);

const envelope = {
  seq: z.number().int().min(1),
  id: z.string(),
  bench: z.string(),
  at: z.iso.datetime(),
  subject: z.string(),
  origin: z.strictObject({ seq: z.number().int().min(1), prevHash: hex64, hash: hex64 }).optional(),
  prevHash: hex64,
  hash: hex64,
};

const entryShapes = keysOf(kinds).map((kind) =>
  z.strictObject({ ...envelope, kind: z.literal(kind), body: kinds[kind] }),
);

/** An entry of any kind, as exported and as the API gives it. */
export const anyEntry = z.union(entryShapes as [(typeof entryShapes)[number], ...typeof entryShapes]);

/** The published JSON Schema (2020-12) of an exported entry. */
export function entrySchema(): Record<string, unknown> {
  return {
    $id: "underhook-ledger-entry",
    title: "Entry of an Underhook ledger",
    ...z.toJSONSchema(anyEntry, { unrepresentable: "any", io: "input" }),
  };
}
