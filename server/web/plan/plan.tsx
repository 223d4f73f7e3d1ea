import type { FastifyInstance } from "fastify";
import { massUnits } from "../../../calibration/units.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { type PlanForm, type PlanPage, Plan as PlanView } from "../../../views/plan/index.tsx";
import type { Plan } from "../../conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import type { Library } from "../../metals/library.ts";
import { firstMethod, plannedMethods } from "../../methods/index.ts";
import type { BenchSettings } from "../../station/bench-settings.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { readForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { claimOptions } from "../metals/claim-options.ts";
import { html, queryOf } from "../page-request.ts";
import { refusedBy } from "../refused.ts";
import { planForm } from "./plan-form.ts";
import { planAnswer } from "./plan-view.ts";
import { wallTable } from "./wall-table.ts";

/** Plans a weighing with the metals in force; may take its time, and never blocks the page. */
export type PlanWeighing = (weighing: PlannedWeighing) => Promise<Plan>;

/** The Plan page: asked and answered by its address, before anything gets wet; nothing is stored. */
export function planRoutes(
  app: FastifyInstance,
  parts: { settings: SettingsRepository; library: CurrentLibrary; plan: PlanWeighing; demo: boolean },
): void {
  const { settings, library, plan, demo } = parts;
  app.get("/plan", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/plan", demo });
    const asked = queryOf(request);
    const view = await pageOf(asked, settings.now, library.now, { plan, locale: frame.locale });
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("frame.plan"), main: <PlanView {...view} /> }),
      view.problems.length > 0 ? 422 : 200,
    );
  });
}

/** Other questions that are answered by typing. */
const more = [
  { href: "/plan/fineness", label: { code: "plan.question.fineness" } },
  { href: "/plan/density-matches", label: { code: "plan.question.density-matches" } },
  { href: "/plan/two-bodies", label: { code: "plan.question.two-bodies" } },
] as const;

async function pageOf(
  asked: Record<string, string | undefined>,
  settings: BenchSettings,
  library: Library,
  { plan, locale }: { plan: PlanWeighing; locale: Locale },
): Promise<PlanPage> {
  const claims = claimOptions(library, locale, settings.metal);
  const form = formOf(asked, settings, claims[0]?.id ?? "", locale);
  const blank = { methods: plannedMethods, form, claims, units: massUnits, problems: [], more, locale };
  if (asked.mass === undefined) return blank;
  const read = readForm(planForm(form, { conditions: settings.conditions, library }), form, locale);
  if ("problems" in read) return { ...blank, problems: read.problems };
  try {
    const planned = await plan(read.values);
    return {
      ...blank,
      answer: planAnswer(planned, read.values, library, locale),
      table: wallTable(read.values, library, locale),
    };
  } catch (error) {
    const refused = refusedBy(error);
    if (!refused) throw error;
    return { ...blank, problems: [{ fieldId: "mass", error: refused.message }] };
  }
}

/** The form as it was sent; what was not sent is as the bench is set up. */
function formOf(
  asked: Record<string, string | undefined>,
  { method, scaleStep }: BenchSettings,
  firstClaim: string,
  locale: Locale,
): PlanForm {
  return {
    method:
      plannedMethods.find((one) => one === asked.method) ??
      plannedMethods.find((one) => one === method) ??
      firstMethod,
    claim: asked.claim ?? firstClaim,
    mass: asked.mass ?? "",
    massUnit: asked.massUnit ?? "g",
    readability: asked.readability ?? inLocale(scaleStep.text, locale),
    readabilityUnit: asked.readabilityUnit ?? scaleStep.unit,
    repeatability: asked.repeatability ?? "",
    pieces: asked.pieces?.trim() || "1",
  };
}
