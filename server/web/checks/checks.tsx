import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { CheckForm, type CheckFormView } from "../../../views/checks/form.tsx";
import { type CheckKind, checkKinds, guideOf } from "../../../views/checks/guides.ts";
import { adjustedBy, ChecksIndex } from "../../../views/checks/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { basisOf, withEpoch } from "../../checks/charts/epoch.ts";
import type { Evaluate } from "../../compute/evaluation.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { AdjustmentRepository } from "../../station/adjustment-repository.ts";
import type { Bench } from "../../station/bench.ts";
import { chartsOf } from "../../station/check-charts.ts";
import type { CheckRepository } from "../../station/check-repository.ts";
import { weighingPointRepository } from "../../station/weighing-point-repository.ts";
import { type Entries, formIn, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { checkFormView } from "./check-form-view.tsx";
import { checkForm } from "./checks-form.ts";
import { balanceChecked, checkMade } from "./checks-made.ts";
import { checksView } from "./checks-view.ts";
import { withNextReading } from "./live-check.ts";

export interface CheckParts {
  bench: Bench;
  ledger: Ledger;
  checks: CheckRepository;
  adjustments: AdjustmentRepository;
  evaluate: Evaluate;
  demo: boolean;
}

type Problems = CheckFormView["problems"];
type KindRequest = FastifyRequest<{ Params: { kind: string } }>;

/** The Checks page and its guided checks. Every attempt is an entry of the ledger, passed or not. */
export function checkRoutes(
  app: FastifyInstance,
  { bench, ledger, checks, adjustments, evaluate, demo }: CheckParts,
): void {
  const now = () => new Date().toISOString();
  const weighed = weighingPointRepository(ledger);

  async function index(request: FastifyRequest, reply: FastifyReply, refused?: Problems, typed = {}) {
    const frame = frameOf(request, reply, { path: "/checks", demo });
    const view = await checksView({ bench, checks, adjustments, weighed, ledger, at: now(), manner: frame });
    const main = <ChecksIndex {...view} csrfToken={frame.csrfToken} problems={refused ?? []} typed={typed} />;
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("checks-page.title"), main }),
      refused ? 422 : 200,
    );
  }

  function form(
    request: FastifyRequest,
    reply: FastifyReply,
    kind: CheckKind,
    { problems = [], values = {} }: { problems?: Problems; values?: Record<string, string> } = {},
  ) {
    const frame = frameOf(request, reply, { path: "/checks", demo });
    const { kept } = queryOf(request);
    const view = checkFormView(checks, kind, { problems, values, kept }, { ...frame, bench, demo });
    const title = guideOf(kind, frame.locale).title;
    return html(
      reply,
      page({ ...frame, title, main: <CheckForm {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/checks", (request, reply) => index(request, reply));

  app.get("/checks/:kind", (request: KindRequest, reply) => {
    const kind = checkKinds.find((one) => one === request.params.kind);
    return kind ? form(request, reply, kind) : reply.callNotFound();
  });

  app.post("/checks/limits", { preHandler: app.csrfProtection }, async (request, reply) => {
    try {
      await keepLimits(checks, (await weighed.now()).points, formIn(request, limitsForm), now());
      return reply.redirect("/checks", 303);
    } catch (error) {
      return index(request, reply, [{ fieldId: "main", error: refusalOf(error).message }], asTyped(request));
    }
  });

  app.post("/checks/adjusted", { preHandler: app.csrfProtection }, async (request, reply) => {
    try {
      const { of, adjusted } = formIn(request, lookedAtForm);
      await adjustments.lookedAt(of ?? balanceChecked(bench), adjusted);
      return reply.redirect("/checks", 303);
    } catch (error) {
      const problems = [{ fieldId: adjustedBy(asTyped(request).of), error: refusalOf(error).message }];
      return index(request, reply, problems, asTyped(request));
    }
  });

  app.post<{ Params: { kind: string } }>(
    "/checks/:kind/readings",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const kind = checkKinds.find((one) => one === request.params.kind);
      if (!kind) return reply.callNotFound();
      const values = asTyped(request);
      try {
        const next = await withNextReading(kind, formIn(request, takenForm), bench);
        return form(request, reply, kind, { values: next });
      } catch (error) {
        const problems = [{ fieldId: "main", error: refusalOf(error).message }];
        return form(request, reply, kind, { problems, values });
      }
    },
  );

  app.post<{ Params: { kind: string } }>(
    "/checks/:kind",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const kind = checkKinds.find((one) => one === request.params.kind);
      if (!kind) return reply.callNotFound();
      const values = asTyped(request);
      const read = postedForm(request, checkForm(kind));
      if ("problems" in read) return form(request, reply, kind, { problems: read.problems, values });
      const { step, note, sensor = "" } = formIn(request, keptForm);
      try {
        const already = checks.all.find(({ id }) => id === step);
        if (!already) {
          const at = { bench, checks, evaluate, at: now() };
          const { result, asked } = await checkMade(kind, { ...read.values, sensor }, at);
          const kept = { ...result, ...(note === "" ? {} : { note }) };
          await checks.keep(kept, asked, step);
        }
        return reply.redirect(`/checks/${kind}?kept=${step ?? checks.all.at(-1)?.id}`, 303);
      } catch (error) {
        return form(request, reply, kind, {
          problems: [{ fieldId: "main", error: refusalOf(error).message }],
          values,
        });
      }
    },
  );
}

const takenForm = ({ named }: Entries) => named("");
const keptForm = ({ typed, ifSent }: Entries) =>
  z.object({ step: ifSent(), note: typed(), sensor: ifSent() });
const lookedAtForm = (entry: Entries) =>
  z.object({ of: entry.ifSent(), adjusted: entry.text({ missing: message("bench-check.entry.unsigned") }) });
const limitsForm = ({ typed }: Entries) => z.object({ chart: typed(), by: typed(), why: typed() });

/** Keeps new limits of a chart, from now on, with who set them and why. Throws Refusal. */
async function keepLimits(
  checks: CheckRepository,
  points: Parameters<typeof chartsOf>[1],
  { chart: id, by, why }: z.output<ReturnType<typeof limitsForm>>,
  at: string,
): Promise<void> {
  const chart = chartsOf(checks, points).find((one) => `${one.kind} ${one.of}` === id);
  if (!chart) throw new Refusal("bench-check.chart.unknown", { chart: id });
  const next = withEpoch(chart, { from: at, by, why, basis: basisOf(chart) }).epochs.at(-1);
  if (next) await checks.keepLimits({ chart: chart.kind, of: chart.of, ...next });
}
