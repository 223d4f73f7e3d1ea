import type { Ledger } from "../../ledger/ledger.ts";
import type { Bench } from "../../station/bench.ts";
import { idFor } from "../../station/ticket-ids.ts";
import { ticketOf } from "../../weighing/opening.ts";
import type { Seen } from "../about.ts";

/** Calls the weighing of another item than the ticket's off, and starts the ticket anew with the water as stated. */
export async function weighTicketAgain({ station, open }: Bench, ledger: Ledger, about: Seen): Promise<void> {
  await station.do({ do: "call-off-other-item", ...about });
  const subject = open && (await idFor(open.id, ledger));
  if (!open || subject === undefined) return;
  await station.do({ do: "start-weighing", subject, seen: 0, ticket: ticketOf(open) });
  if (open.waterCelsius === undefined) return;
  await station.do({ do: "state-temperature", subject, seen: "now", celsius: open.waterCelsius });
}
