import type { EntryOf } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { ticketAfter } from "../weighing/ticket-after.ts";
import type { Lot } from "./lot.ts";
import type { LotItem } from "./lot-item.ts";

type Announced = EntryOf<"ticket-announced">["body"];

/** Announced tickets looked at, newest list first. */
const mostLookedAt = 2000;

/** The tickets a list announced for a lot, in the order of the list; a list names the lot by its name. */
export async function announcedFor(ledger: Ledger, lot: Lot): Promise<Announced[]> {
  const entries = await ledger.entries({ kind: "ticket-announced", newestFirst: true, limit: mostLookedAt });
  const found = entries.flatMap(({ kind, body }) => (kind === "ticket-announced" ? [body as Announced] : []));
  return found.filter((body) => body.lot === lot.name || body.lot === lot.id).reverse();
}

/** Announced tickets that were not weighed in the lot. */
export function stillToCome(announced: readonly Announced[], items: readonly LotItem[]): Announced[] {
  const weighed = new Set(items.filter(({ voided }) => !voided).map(({ ticket }) => ticket));
  return announced.filter(({ ticket }) => !weighed.has(ticket));
}

/** The next ticket by itself: the first of the list that is to come, else the number after the last one weighed. */
export function nextTicketOf(announced: readonly Announced[], items: readonly LotItem[]): string | undefined {
  const [first] = stillToCome(announced, items);
  const last = items.at(-1);
  const next = first?.ticket ?? (last && ticketAfter(last.ticket));
  return next !== undefined && !items.some(({ ticket, voided }) => ticket === next && !voided)
    ? next
    : undefined;
}
