import type { EntryOf } from "../ledger/entry.ts";
import type { LotCheck, RaisedFlag } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";

/** A flag on a piece. Cleared is not deleted: it stays with its reason. */
export interface Flag {
  flag: string;
  reason?: string;
  cleared?: string;
}

/** What somebody set or cleared in a lot, oldest first. */
export type FlagEntry = EntryOf<"lot-flag">;

/** The flags of a piece: those the bench raises, those a person set; the newest word on each counts. */
export function flagsOf(item: LotItem, checks: readonly LotCheck[], said: readonly FlagEntry[]): Flag[] {
  const about = said.filter(({ body }) => body.piece === item.id);
  const raised: RaisedFlag[] = [
    ...(item.voided ? (["voided"] as const) : []),
    ...(item.typed ? (["typed"] as const) : []),
    ...(item.state === "no-valid-reading" ? (["no valid reading"] as const) : []),
    ...checks.flatMap(({ flag, tickets }) => (flag && tickets.includes(item.ticket) ? [flag] : [])),
  ];
  const names = [...new Set<string>([...raised, ...about.map(({ body }) => body.flag)])];
  return names.map((flag) => {
    const last = about.findLast(({ body }) => body.flag === flag)?.body;
    if (last === undefined) return { flag };
    return last.set ? { flag, reason: last.reason } : { flag, cleared: last.reason };
  });
}

/** True when the flag of this ticket was cleared and not set again. */
export function isCleared(item: LotItem, flag: string, said: readonly FlagEntry[]): boolean {
  return said.findLast(({ body }) => body.piece === item.id && body.flag === flag)?.body.set === false;
}
