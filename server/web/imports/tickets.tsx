import type { FastifyInstance } from "fastify";
import { z } from "zod";
import { Refusal } from "../../../calibration/refusal.ts";
import { TicketsPage, type TicketsView } from "../../../views/imports/tickets.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import type { Bench } from "../../station/bench.ts";
import { idFor } from "../../station/ticket-ids.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { html } from "../page-request.ts";
import { nameIn } from "../records/record-view.ts";
import { refusalOf } from "../refused.ts";

interface Parts {
  bench: Bench;
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
}

type Announced = EntryOf<"ticket-announced">;

/** Tickets looked at for the list, newest list first. */
const mostLookedAt = 500;

/** The piece of an announced ticket has an id of its own, so that it is put on the bench once. */
const itemOf = ({ id }: Announced) => `piece-${id}`;

const ticketForm = ({ typed }: Entries) => z.object({ id: typed() });

/** Tickets that were announced in a list and have not been weighed. */
export function ticketRoutes(app: FastifyInstance, { bench, ledger, demo, library }: Parts): void {
  async function waiting(): Promise<Announced[]> {
    const announced = await ledger.entries({
      kind: "ticket-announced",
      newestFirst: true,
      limit: mostLookedAt,
    });
    const found: Announced[] = [];
    for (const entry of announced) {
      if (entry.kind !== "ticket-announced") continue;
      const { ticket } = entry.body;
      const opened = (await idFor(itemOf(entry), ledger)) === undefined;
      const weighed = await ledger.records({ filters: { ticket, from: entry.at }, page: { size: 1 } });
      if (!opened && weighed.count === 0) found.push(entry);
    }
    return found.reverse();
  }

  app.get("/tickets", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/", demo });
    const view: TicketsView = {
      tickets: (await waiting()).map(({ id, body: { ticket, description, claim, lot = "", from } }) => ({
        id,
        ticket,
        piece: description,
        claim: claim === undefined ? "" : nameIn(library(), claim, frame.locale),
        lot,
        from,
      })),
      csrfToken: frame.csrfToken,
    };
    const title = tellerOf(frame.locale)("tickets.title");
    return html(reply, page({ ...frame, title, main: <TicketsPage {...view} /> }));
  });

  app.post("/tickets", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { id } = formIn(request, ticketForm);
    const t = tellerOf(lookOf(request).locale);
    try {
      const entry = (await waiting()).find((one) => one.id === id);
      if (!entry) throw new Refusal("tickets.unknown");
      const { ticket, description, claim, customer, mass_g } = entry.body;
      const piece = await idFor(itemOf(entry), ledger);
      if (piece === undefined) throw new Refusal("tickets.unknown");
      await bench.station.do({
        do: "start-weighing",
        subject: piece,
        seen: 0,
        ticket: {
          ticket,
          description,
          method: bench.preferences.method,
          ...(claim === undefined ? {} : { claim }),
          ...(customer === undefined ? {} : { customer }),
          ...(mass_g === undefined ? {} : { customerSupplied: { mass_g } }),
        },
      });
      return reply.redirect("/", 303);
    } catch (error) {
      const refused = refusalOf(error);
      const frame = frameOf(request, reply, { path: "/", demo });
      const main = <Problem message={refused.message} />;
      return html(reply, page({ ...frame, title: t("frame.not-done"), main }), 422);
    }
  });
}
