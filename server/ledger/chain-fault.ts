import { type Message, message } from "../../calibration/message.ts";
import { canonicalJson } from "./canonical-json.ts";
import { chainHash, contentHash, type Origin } from "./entry.ts";
import type { EntryRow } from "./tables.ts";

/** What is wrong with a row by itself and behind the one before; null when nothing is. */
export function chainFault(row: EntryRow, before: number, hashBefore: string): Message | null {
  if (row.seq !== before + 1) {
    const [from, to] = [before + 1, row.seq - 1];
    return message("ledger.fault.missing", { from, to, count: to - from + 1, before, found: row.seq });
  }
  if (chainHash(contentHash(row), row.prev_hash) !== row.hash)
    return message("ledger.fault.changed", { row: row.seq, kind: row.kind, at: row.at });
  if (row.prev_hash !== hashBefore)
    return message("ledger.fault.does-not-follow", { row: row.seq, kind: row.kind, at: row.at, before });
  // Only a body that is one JSON value by itself has one place in the text that is hashed.
  return jsonOf(row.body) === undefined ? message("ledger.fault.unreadable", { row: row.seq }) : null;
}

/** What another bench handed over must still have the hash it had there. */
export function originFault(row: EntryRow): Message | null {
  if (row.origin === null) return null;
  const origin = jsonOf(row.origin) as Origin | undefined;
  if (!origin || canonicalJson(origin) !== row.origin)
    return message("ledger.fault.origin-form", { row: row.seq });
  const there = chainHash(contentHash({ ...row, seq: origin.seq, origin: null }), origin.prevHash);
  return there === origin.hash
    ? null
    : message("ledger.fault.origin-hash", { row: row.seq, bench: row.bench });
}

/** The value that a text says as JSON; undefined when it says none. */
export function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
