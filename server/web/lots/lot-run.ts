import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { nothingClaimed } from "../../../views/lots/view.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { announcedFor, nextTicketOf } from "../../lots/announced.ts";
import { isFull } from "../../lots/full.ts";
import type { Lot } from "../../lots/lot.ts";
import type { LotRepository } from "../../lots/lot-repository.ts";
import type { Library } from "../../metals/library.ts";
import type { Bench } from "../../station/bench.ts";
import type { LotRun } from "../../station/hands-free.ts";
import type { Ticket } from "../../weighing/item.ts";

export interface LotRunParts {
  bench: Bench;
  ledger: Ledger;
  lots: LotRepository;
  library: () => Library;
}

/** What goes on by itself while a lot is screened hands-free. */
export function lotRun(parts: LotRunParts): LotRun {
  const { bench, lots, library } = parts;
  const lotOf = async (id: string): Promise<Lot> => {
    const lot = await lots.lot(id);
    if (!lot) throw new Refusal("lot.none");
    return lot;
  };
  return {
    async record(id) {
      const before = bench.open;
      await recordWhenComplete(bench, id);
      if (!before || bench.open) return undefined;
      const item = (await lots.items(id, library())).findLast((one) => one.id === before.id);
      return (
        item && message("lots.run.recorded", { ticket: item.ticket, state: message(`state.${item.state}`) })
      );
    },
    async next(id) {
      const lot = await lotOf(id);
      const items = await lots.items(id, library());
      if (isFull(lot, items))
        return { message: message("lots.run.full", { counted: lot.count! }), isStarted: false };
      const ticket = nextTicketOf(await announcedFor(parts.ledger, lot), items);
      if (ticket === undefined) return { message: message("lots.run.first-ticket"), isStarted: false };
      const started = await ticketOf(parts, lot, { ticket, claim: "" });
      await bench.station.do({ do: "start-weighing", ...bench.about, ticket: started });
      return { message: message("lots.run.next", { ticket }), isStarted: true };
    },
  };
}

/** The ticket as it is weighed in its lot, with what a list says of it. Throws Refusal without a ticket or a claim. */
export async function ticketOf(
  { ledger, library }: Pick<LotRunParts, "ledger" | "library">,
  lot: Lot,
  { ticket, claim: typed }: { ticket: string; claim: string },
): Promise<Ticket> {
  if (ticket === "") throw new Refusal("lot.ticket-missing", {}, "ticket");
  const listed = (await announcedFor(ledger, lot)).find((one) => one.ticket === ticket);
  const broughtBy = listed?.customer ?? lot.from;
  const claim = claimOf({ ticket, listed: listed?.claim, typed }, lot, library());
  return {
    ticket,
    description: listed?.description ?? "",
    method: lot.method,
    lot: lot.id,
    ...(claim === undefined ? {} : { claim }),
    ...(broughtBy === undefined ? {} : { customer: broughtBy }),
    ...(listed?.mass_g === undefined ? {} : { customerSupplied: { mass_g: listed.mass_g } }),
  };
}

/**
 * What the ticket is claimed as: what a list says of it, else what was chosen, else what the lot is. Undefined where
 * nothing is claimed. Throws Refusal where nobody said anything.
 */
function claimOf(
  { ticket, listed, typed }: { ticket: string; listed: string | undefined; typed: string },
  lot: Lot,
  library: Library,
): string | undefined {
  if (listed !== undefined && library.has(listed)) return listed;
  if (typed === nothingClaimed) return undefined;
  if (typed !== "" && !library.has(typed)) throw new Refusal("claim.unknown", { claim: typed }, "claim");
  const claim = typed || lot.claim;
  if (claim === undefined && !lot.nothingClaimed && !lot.closed)
    throw new Refusal("lot.claim-open", { ticket }, "claim");
  return claim;
}

/** Writes the record of the piece on the bench once its readings are all there. */
export async function recordWhenComplete(
  { station, open, secondPersonDue }: Bench,
  lot: string,
): Promise<void> {
  if (!open || open.lot !== lot || secondPersonDue !== undefined) return;
  const wet = open.captures.some(({ role, excluded }) => role !== "dry" && excluded === undefined);
  if (wet) await station.do({ do: "write-record", subject: open.id, seen: "now" });
}
