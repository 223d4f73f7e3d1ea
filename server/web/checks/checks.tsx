import { randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { massUnits } from "../../../calibration/units.ts";
import { CheckForm, type CheckFormView } from "../../../views/checks/form.tsx";
import { type CheckKind, checkKinds, guideOf } from "../../../views/checks/guides.ts";
import { ChecksIndex } from "../../../views/checks/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { basisOf, withEpoch } from "../../checks/charts/epoch.ts";
import type { Evaluate } from "../../compute/evaluation.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Bench } from "../../station/bench.ts";
import { chartsOf } from "../../station/check-charts.ts";
import { type CheckRepository, thermometerName } from "../../station/check-repository.ts";
import { weighingPointRepository } from "../../station/weighing-point-repository.ts";
import { frameOf, lookOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { typedCheck } from "./checks-form.ts";
import { checkMade } from "./checks-made.ts";
import { checksView, kindInLedger } from "./checks-view.ts";

export interface CheckParts {
  bench: Bench;
  ledger: Ledger;
  checks: CheckRepository;
  evaluate: Evaluate;
  demo: boolean;
}

type Problems = CheckFormView["problems"];
type KindRequest = FastifyRequest<{ Params: { kind: string } }>;

/** The Checks page and its guided checks. Every attempt is an entry of the ledger, passed or not. */
export function checkRoutes(
  app: FastifyInstance,
  { bench, ledger, checks, evaluate, demo }: CheckParts,
): void {
  const now = () => new Date().toISOString();
  const weighed = weighingPointRepository(ledger);

  async function index(request: FastifyRequest, reply: FastifyReply, refused?: Problems, typed = {}) {
    const frame = frameOf(request, reply, { path: "/checks", demo });
    const view = await checksView({ bench, checks, weighed, ledger, at: now(), locale: frame.locale });
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
    const t = tellerOf(frame.locale);
    const { kept } = request.query as { kept?: string };
    const shown = checks.all.find(({ id }) => id === kept);
    const mine = checks.all.filter((check) => check.kind === kindInLedger(kind));
    const passedBefore = mine.findLastIndex(({ passed }) => passed);
    const view: CheckFormView = {
      kind,
      units: massUnits,
      unit: values.unit ?? "g",
      values,
      problems,
      attempt: mine.length - passedBefore,
      csrfToken: frame.csrfToken,
      stepKey: values.step ?? randomUUID(),
      ...(shown && {
        outcome: {
          says: shown.says,
          passed: shown.passed,
          todo: shown.todo,
          facts: [
            [
              t("check-form.of"),
              shown.of === thermometerName ? t("checks-page.profile.thermometer") : shown.of,
            ],
            [t("check-form.by"), shown.by],
            [t("check-form.at"), `${shown.at.slice(0, 16).replace("T", " ")} UTC`],
          ],
        },
      }),
    };
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
    const fields = fieldsOf(request);
    const { chart: id = "", by = "", why = "" } = fields;
    const chart = chartsOf(checks, (await weighed.now()).points).find(
      (one) => `${one.kind} ${one.of}` === id,
    );
    if (!chart)
      return index(request, reply, [
        { fieldId: "main", error: message("bench-check.chart.unknown", { chart: id }) },
      ]);
    try {
      const next = withEpoch(chart, { from: now(), by, why, basis: basisOf(chart) }).epochs.at(-1);
      if (next) await checks.keepLimits({ chart: chart.kind, of: chart.of, ...next });
      return reply.redirect("/checks", 303);
    } catch (error) {
      return index(request, reply, [{ fieldId: "main", error: refusalOf(error).says }], fields);
    }
  });

  app.post<{ Params: { kind: string } }>(
    "/checks/:kind",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const kind = checkKinds.find((one) => one === request.params.kind);
      if (!kind) return reply.callNotFound();
      const values = fieldsOf(request);
      const typed = typedCheck(kind, values, lookOf(request).locale);
      if ("problems" in typed) return form(request, reply, kind, { problems: typed.problems, values });
      try {
        const already = checks.all.find(({ id }) => id === values.step);
        if (!already) {
          const { result, asked } = await checkMade(kind, typed, { bench, checks, evaluate, at: now() });
          const note = (values.note ?? "").trim();
          const kept = { ...result, ...(note === "" ? {} : { note }) };
          await checks.keep(kept, asked, values.step);
        }
        return reply.redirect(`/checks/${kind}?kept=${values.step ?? checks.all.at(-1)?.id}`, 303);
      } catch (error) {
        return form(request, reply, kind, {
          problems: [{ fieldId: "main", error: refusalOf(error).says }],
          values,
        });
      }
    },
  );
}
