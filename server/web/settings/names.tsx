import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { NamesPage, type NamesView } from "../../../views/settings/names.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { wordsOf } from "../../ledger/search-words.ts";
import { type Entries, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { problemsOf } from "../refused.ts";
import { dayOf, whenOf } from "../when.ts";

/** Names and erasures shown at once. */
const mostShown = 20;

const erasingForm = ({ typed, text }: Entries) =>
  z.object({
    reference: typed(),
    q: typed(),
    by: text({ missing: message("settlement.by-missing") }),
    reason: text({ missing: message("settlement.reason-missing") }),
  });

/** Names of customers are looked for and erased; the ledger keeps who did it and why, and every entry as it was. */
export function nameRoutes(app: FastifyInstance, { ledger, demo }: { ledger: Ledger; demo: boolean }): void {
  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { q, ...refused }: Pick<NamesView, "q" | "values" | "problems">,
  ) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const all = ledger.names?.all ?? [];
    const words = wordsOf(q);
    const found = new Set(words.length > 0 ? ledger.names?.matching(words) : []);
    const erased = await ledger.entries({ kind: "name-erased", newestFirst: true, limit: mostShown });
    const view: NamesView = {
      q,
      names: all
        .filter(({ reference }) => found.has(reference))
        .slice(0, mostShown)
        .map(({ reference, name, at }) => ({ reference, name, since: dayOf(at, frame.zone) })),
      kept: all.length,
      erased: erased.flatMap((entry) =>
        entry.kind === "name-erased"
          ? [{ when: whenOf(entry.at, frame.zone), by: entry.body.by, reason: entry.body.reason }]
          : [],
      ),
      ...refused,
      csrfToken: frame.csrfToken,
    };
    const title = tellerOf(frame.locale)("names.title");
    const status = refused.problems.length > 0 ? 422 : 200;
    return html(reply, page({ ...frame, title, main: <NamesPage {...view} /> }), status);
  }

  app.get("/settings/names", (request, reply) =>
    show(request, reply, { q: queryOf(request).q ?? "", values: {}, problems: [] }),
  );
  app.post("/settings/names", { preHandler: app.csrfProtection }, async (request, reply) => {
    const values = asTyped(request);
    const back = (problems: NamesView["problems"]) =>
      show(request, reply, { q: values.q ?? "", values, problems });
    const read = postedForm(request, erasingForm);
    if ("problems" in read) return back(read.problems);
    const { reference, by, reason } = read.values;
    try {
      if (!ledger.names?.all.some((one) => one.reference === reference)) throw new Refusal("names.unknown");
      // who and why stand in the ledger before the name is gone
      await ledger.append("name-erased", "names", { reference, by, reason });
      await ledger.names.erase(reference);
      return reply.redirect("/settings/names", 303);
    } catch (error) {
      return back(problemsOf(error, "by"));
    }
  });
}
