import { z } from "zod";
import { keysOf } from "../../calibration/keyed.ts";
import type { Entry } from "./entry.ts";
import { kinds } from "./kinds.ts";
import type { Ledger } from "./ledger.ts";

/** Entries read together: some milliseconds of work, after which whatever else waits has its turn. */
const pageRows = 200;

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
