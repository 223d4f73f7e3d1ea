import { randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { MeltsIndex } from "../../../views/melts/index.tsx";
import { MeltPage } from "../../../views/melts/show.tsx";
import type { MeltForm, MeltView, SentBack } from "../../../views/melts/view.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { LotRepository } from "../../lots/lot-repository.ts";
import type { MeltCommandContent } from "../../melts/commands.ts";
import { meltOf } from "../../melts/evolve.ts";
import { newestMelts } from "../../melts/melt-repository.ts";
import type { Station } from "../../station/station.ts";
import { seenOf } from "../about.ts";
import { type Form, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html } from "../page-request.ts";
import { problemsOf } from "../refused.ts";
import { dayOf } from "../when.ts";
import {
  drillingForm,
  excludingForm,
  makingForm,
  meltAssayForm,
  meltReopeningForm,
  pouringForm,
  settlingForm,
  toleranceForm,
} from "./melt-forms.ts";
import { meltRow, meltView } from "./melt-view.ts";

interface MeltParts {
  station: Station;
  ledger: Ledger;
  demo: boolean;
  now: () => Date;
}

type MeltRequest = FastifyRequest<{ Params: { melt: string } }>;

/** Lots and melts that the list shows. */
const mostShown = 50;

/** Melts: whole lots go in, a bar comes out, laboratories assay it, and its figures settle the lots. */
export function meltRoutes(app: FastifyInstance, { station, ledger, demo, now }: MeltParts): void {
  const lots = new LotRepository(ledger);
  const lotNames = async () => {
    const found = await lots.newest(mostShown);
    return new Map(found.map(({ lot }) => [lot.id, lot.name]));
  };

  async function list(
    request: FastifyRequest,
    reply: FastifyReply,
    refused: SentBack = { values: {}, problems: [] },
  ) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const [melts, names] = [await newestMelts(ledger, mostShown), await lotNames()];
    const melted = new Set(melts.flatMap((melt) => melt.lots));
    const view = {
      melts: melts.map((melt) => meltRow(melt, (id) => names.get(id) ?? id, around)),
      lots: [...names].flatMap(([id, name]) => (melted.has(id) ? [] : [{ id, name }])),
      ...refused,
      stepKey: `melt-${randomUUID()}`,
      csrfToken: around.csrfToken,
    };
    const title = tellerOf(around.locale)("melts.title");
    const status = refused.problems.length > 0 ? 422 : 200;
    return html(reply, page({ ...around, title, main: <MeltsIndex {...view} /> }), status);
  }

  async function show(
    request: MeltRequest,
    reply: FastifyReply,
    refused: Pick<MeltView, "sent" | "values" | "problems"> = { sent: undefined, values: {}, problems: [] },
  ) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const entries = await ledger.entriesOf(request.params.melt);
    const melt = meltOf(entries);
    const t = tellerOf(around.locale);
    if (!melt) {
      const main = <Problem message={message("melt.none")} />;
      return html(reply, page({ ...around, title: t("melts.none"), main }), 404);
    }
    const names = await lotNames();
    const view: MeltView = {
      ...meltView(melt, (id) => names.get(id) ?? id, around),
      ...refused,
      csrfToken: around.csrfToken,
      about: { subject: melt.id, seen: entries.length },
    };
    const title = t("melts.of", { melt: melt.name });
    const status = refused.problems.length > 0 ? 422 : 200;
    return html(reply, page({ ...around, title, main: <MeltPage {...view} /> }), status);
  }

  app.get("/melts", (request, reply) => list(request, reply));
  app.post("/melts", { preHandler: app.csrfProtection }, async (request, reply) => {
    const read = postedForm(request, makingForm);
    if ("problems" in read)
      return list(request, reply, { values: asTyped(request), problems: read.problems });
    const { step, melt } = read.values;
    const subject = step.startsWith("melt-") ? step : `melt-${randomUUID()}`;
    try {
      await station.do({ do: "make-melt", subject, seen: 0, melt });
      return reply.redirect(`/melts/${subject}`, 303);
    } catch (error) {
      return list(request, reply, {
        values: asTyped(request),
        problems: problemsOf(error, "name"),
      });
    }
  });

  app.get<{ Params: { melt: string } }>("/melts/:melt", (request, reply) => show(request, reply));

  /** Reads a form of the melt and does what it asks, or shows what is wrong with it. */
  function form<T>(
    end: MeltForm,
    shape: () => Form<T>,
    ask: (typed: T) => MeltCommandContent | Promise<MeltCommandContent>,
  ) {
    app.post<{ Params: { melt: string } }>(
      `/melts/:melt/${end}`,
      { preHandler: app.csrfProtection },
      async (request, reply) => {
        const { melt } = request.params;
        const back = (problems: MeltView["problems"]) =>
          show(request, reply, { sent: end, values: asTyped(request), problems });
        const typed = postedForm(request, shape());
        if ("problems" in typed) return back(typed.problems);
        try {
          await station.do({ ...seenOf(melt, request), ...(await ask(typed.values)) });
          return reply.redirect(`/melts/${melt}`, 303);
        } catch (error) {
          return back(problemsOf(error, "by"));
        }
      },
    );
  }
  form(
    "bar",
    () => pouringForm,
    async ({ bar, ...poured }) => ({
      do: "pour-melt",
      poured: { ...poured, ...(bar === undefined ? {} : { bar: await recordOf(bar) }) },
    }),
  );
  form(
    "drillings",
    () => drillingForm,
    (drilled) => ({ do: "drill-melt", drilled }),
  );
  form(
    "tolerances",
    () => toleranceForm,
    (tolerance) => ({ do: "state-tolerance", tolerance }),
  );
  form(
    "assays",
    () => meltAssayForm(dayOf(now().toISOString(), app.zone())),
    (assay) => ({ do: "assay-melt", assay }),
  );
  form(
    "exclusions",
    () => excludingForm,
    (excluded) => ({ do: "exclude-melt-assay", excluded }),
  );
  form(
    "settling",
    () => settlingForm,
    ({ by }) => ({ do: "settle-melt", by }),
  );
  form(
    "reopening",
    () => meltReopeningForm,
    (typed) => ({ do: "reopen-melt", ...typed }),
  );

  /** The newest record with this ticket. Throws Refusal where there is none. */
  async function recordOf(ticket: string): Promise<string> {
    const { records } = await ledger.records({ filters: { ticket, voided: false }, page: { size: 1 } });
    if (!records[0]) throw new Refusal("melt.bar-unknown", { bar: ticket }, "bar");
    return records[0].subject;
  }
}
