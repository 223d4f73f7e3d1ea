import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { SecondPersonPage, type SecondPersonPageView } from "../../../views/bench/second-person.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Bench } from "../../station/bench.ts";
import type { Item } from "../../weighing/item.ts";
import { type TypedAgain, typedReadings } from "../../weighing/second-person.ts";
import { aboutIn } from "../about.ts";
import { type Entries, type Form, formIn } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { problemsOf } from "../refused.ts";

const signedForm = ({ typed, ifSent }: Entries) =>
  z.object({ by: typed(), typedBy: typed(), celsius: ifSent() });

/** Where a second person reads typed readings again; the page holds nothing of the first ones. */
export function secondPersonRoutes(
  app: FastifyInstance,
  { bench, ledger, demo }: { bench: Bench; ledger: Ledger; demo: boolean },
): void {
  const home = (item: Item | undefined) =>
    item?.lot !== undefined && !item.closed ? `/lots/${item.lot}` : "/";

  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    item: Item,
    { problems = [], typed }: Pick<SecondPersonPageView, "problems"> & { typed?: Record<string, string> },
  ) {
    const frame = frameOf(request, reply, { path: "/", demo });
    const [last] = await ledger.entries({ kind: "second-reading", own: true, newestFirst: true, limit: 1 });
    const typedBy = last?.kind === "second-reading" ? { typedBy: last.body.typedBy } : {};
    const view: SecondPersonPageView = {
      ticket: item.ticket,
      description: item.description,
      roles: typedReadings(item).map(({ role }) => role),
      asksTemperature: item.waterCelsius !== undefined,
      ...(item.operator === undefined ? {} : { operator: item.operator }),
      typed: typed ?? typedBy,
      problems,
      csrfToken: frame.csrfToken,
      about: bench.about,
      back: home(item),
    };
    const title = tellerOf(frame.locale)("second-person.title");
    const main = <SecondPersonPage {...view} />;
    return html(reply, page({ ...frame, title, main }), problems.length > 0 ? 422 : 200);
  }

  app.get("/bench/second-person", (request, reply) => {
    const { item } = bench;
    if (!item || item.closed || bench.secondPersonDue === undefined) return reply.redirect(home(item), 303);
    return show(request, reply, item, { problems: [] });
  });

  app.post("/bench/second-person", { preHandler: app.csrfProtection }, async (request, reply) => {
    const fields = asTyped(request);
    const { item } = bench;
    if (!item || item.closed) return reply.redirect("/", 303);
    const back = home(item);
    try {
      const about = aboutIn(request);
      const again = typedReadings(item).map(({ role }) => {
        const at = `reading-${role}`;
        const form: Form<Record<string, TypedAgain>> = ({ reading }, sent) =>
          z.object({ [at]: reading(sent[`unit-${role}`] ?? "g") });
        return formIn(request, form)[at]!;
      });
      await bench.station.do({ do: "second-reading", ...about, ...formIn(request, signedForm), again });
      // A lot goes on by itself, as it does when the last reading of a piece is taken.
      if (item.lot !== undefined && bench.secondPersonDue === undefined)
        await bench.station.do({ do: "write-record", subject: item.id, seen: "now" });
      return reply.redirect(back, 303);
    } catch (error) {
      return show(request, reply, item, { problems: problemsOf(error, "by"), typed: fields });
    }
  });
}
