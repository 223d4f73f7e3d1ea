import type { Entry } from "../ledger/entry.ts";
import type { Lot } from "./lot.ts";

/** The lot that the entries about one subject tell, oldest first; undefined while none of them opens one. */
export function lotOf(entries: readonly Entry[]): Lot | undefined {
  return entries.reduce<Lot | undefined>(evolveLot, undefined);
}

/** The lot after one more entry. Entries about something else change nothing. */
function evolveLot(lot: Lot | undefined, entry: Entry): Lot | undefined {
  if (entry.kind === "lot-opened")
    return { ...entry.body, id: entry.subject, openedAt: entry.at, flags: [], closings: [] };
  if (lot === undefined || lot.id !== entry.subject) return lot;
  switch (entry.kind) {
    case "lot-water":
      return { ...lot, waterCelsius: entry.body.celsius };
    case "lot-flag":
      return { ...lot, flags: [...lot.flags, entry] };
    case "lot-closed": {
      const closed = { ...entry.body, at: entry.at, entry: entry.id };
      return { ...lot, closed, closings: [...lot.closings, closed] };
    }
    case "lot-reopened": {
      const { closed: _, ...open } = lot;
      return { ...open, reopened: entry };
    }
    default:
      return lot;
  }
}
