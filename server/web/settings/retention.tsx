import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { RetentionPage, type RetentionView } from "../../../views/settings/retention.tsx";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { MeasurementRecord } from "../../ledger/records.ts";
import { expiring, mostYears, type RetentionSetting, retentionFrom } from "../../ledger/retention.ts";
import { type Entries, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { dayOf } from "../when.ts";

/** Records looked at for the list of those whose time is ending. */
const mostLookedAt = 2000;
const mostShown = 200;

interface Parts {
  ledger: Ledger;
  demo: boolean;
  now: () => Date;
}

const retentionForm = ({ number, maybeText }: Entries) =>
  z.object({ years: number({ aboveZero: true, to: mostYears }), by: maybeText(), reason: maybeText() });

/** How long records are kept: shown, lengthened, never carried out by itself. */
export function retentionRoutes(app: FastifyInstance, { ledger, demo, now }: Parts): void {
  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { problems = [], typed = {} }: Partial<Pick<RetentionView, "problems" | "typed">> = {},
  ) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const settings = retentionFrom(await ledger.entries({ kind: "retention" }));
    const inAYear = new Date(now());
    inAYear.setUTCFullYear(inAYear.getUTCFullYear() + 1);
    const { records, more } = await oldEnough(ledger, settings, inAYear);
    const ending = expiring(records, settings, inAYear);
    const view: RetentionView = {
      settings: settings.map(({ at, years, by, reason }) => ({
        since: dayOf(at, frame.zone),
        years,
        by: by ?? "",
        reason: reason ?? "",
      })),
      expiring: ending.slice(0, mostShown).map(({ record, until }) => ({
        id: record.subject,
        ticket: record.ticket,
        measured: dayOf(record.at, frame.zone),
        until: dayOf(until, frame.zone),
        over: Date.parse(until) < now().getTime(),
      })),
      more: more || ending.length > mostShown,
      kept: "kept" in queryOf(request),
      problems,
      typed,
      csrfToken: frame.csrfToken,
    };
    const title = tellerOf(frame.locale)("retention.title");
    return html(
      reply,
      page({ ...frame, title, main: <RetentionPage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/settings/retention", (request, reply) => show(request, reply));
  app.post("/settings/retention", { preHandler: app.csrfProtection }, async (request, reply) => {
    const typed = asTyped(request);
    const read = postedForm(request, retentionForm);
    if ("problems" in read) return show(request, reply, { problems: read.problems, typed });
    await ledger.append("retention", "bench", omitUndefined(read.values));
    return reply.redirect("/settings/retention?kept", 303);
  });
}

/** Records old enough that their time could end before `by`, newest first; of very many only the newest are looked at. */
async function oldEnough(ledger: Ledger, settings: readonly RetentionSetting[], by: Date) {
  const records: MeasurementRecord[] = [];
  if (settings.length === 0) return { records, more: false };
  const youngest = new Date(by);
  youngest.setUTCDate(
    youngest.getUTCDate() - Math.floor(Math.min(...settings.map(({ years }) => years)) * 365),
  );
  for (let before: number | null | undefined; before !== null && records.length < mostLookedAt; ) {
    const page = await ledger.records({
      filters: { until: youngest.toISOString() },
      page: { size: 500, ...(before === undefined ? {} : { before }) },
    });
    records.push(...page.records);
    if (page.next === null) return { records, more: false };
    before = page.next;
  }
  return { records, more: true };
}
