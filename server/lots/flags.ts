import type { EntryOf } from "../ledger/entry.ts";
import { isRaisedFlag, type LotCheck, type RaisedFlag } from "./lot-check.ts";
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
  const raised: RaisedFlag[] = [
    ...(item.voided ? (["voided"] as const) : []),
    ...(item.typed ? (["typed"] as const) : []),
    ...(item.state === "no-valid-reading" ? (["no valid reading"] as const) : []),
    ...checks.flatMap(({ flag, tickets }) => (flag && tickets.includes(item.ticket) ? [flag] : [])),
  ];
  const named = said.flatMap(({ body }) => (body.piece === item.id ? [body.flag] : []));
  return [...new Set<string>([...raised, ...named])].flatMap((flag) => {
    const word = wordOn(item, flag, said);
    if (word === undefined) return raised.some((one) => one === flag) ? [{ flag }] : [];
    return word.set ? [{ flag, reason: word.reason }] : [{ flag, cleared: word.reason }];
  });
}

/** True when the flag of this piece was cleared and not raised or set again. */
export function isCleared(item: LotItem, flag: string, said: readonly FlagEntry[]): boolean {
  return wordOn(item, flag, said)?.set === false;
}

/**
 * The newest word on this flag that still counts. A flag of the bench was cleared for what had been weighed and found
 * until then; a newer weighing, test or assay raises it anew.
 */
function wordOn(item: LotItem, flag: string, said: readonly FlagEntry[]): FlagEntry["body"] | undefined {
  const last = said.findLast(({ body }) => body.piece === item.id && body.flag === flag);
  if (!last) return undefined;
  const outdated = !last.body.set && isRaisedFlag(flag) && last.seq < item.changedSeq;
  return outdated ? undefined : last.body;
}
