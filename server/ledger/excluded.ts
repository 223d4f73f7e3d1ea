import type { Entry } from "./entry.ts";

/** Ids of the entries that a later one sets aside; they stay in the ledger and no longer count. */
export function excludedIn(entries: readonly Entry[]): ReadonlySet<string> {
  return new Set(entries.flatMap((entry) => (entry.kind === "voiding" ? [entry.body.entry] : [])));
}
