import { measure } from "../../../calibration/measure.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { PlanPage } from "../../../views/plan/index.tsx";
import { planTable } from "../../conformity/plan/plan-table.ts";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import type { Library } from "../../metals/library.ts";

/** Masses of the printed table, g: a small ring to a heavy bar, with the troy ounce. */
const masses = [1, 2, 5, 10, 20, 31.1, 50, 100, 250];

/** 1.06 and 6.44, but 1610 and not 1.61e+3. */
const threeFigures = (grams: number) =>
  grams < 1000 ? grams.toPrecision(3) : `${Number(grams.toPrecision(3))}`;

/** What this scale reaches for the claim, by mass and way of weighing, and what ten times finer steps would: for printing. */
export function wallTable(
  planned: PlannedWeighing,
  library: Library,
  locale: Locale,
): NonNullable<PlanPage["table"]> {
  const t = tellerOf(locale);
  const step = planned.readabilityG;
  const finer = +(step / 10).toPrecision(6);
  const { massG: _m, readabilityG: _r, ...base } = planned;
  const hung = planTable({ ...base, method: "hung" }, masses, [step, finer], measure, library);
  const displaced = planTable({ ...base, method: "displaced" }, masses, [step], measure, library);
  const percent = (value: number | null | undefined) =>
    value === null || value === undefined
      ? t("plan.table.no-answer")
      : `± ${inLocale(String(+value.toPrecision(2)), locale)} %`;
  const { pieces, confidence } = planned;
  return {
    caption: t("plan.table.caption", {
      claim: hung.called,
      pieces,
      confidence_percent: +(100 * confidence).toPrecision(6),
    }),
    heads: [
      t("plan.table.mass", { pieces }),
      t("plan.table.displaces"),
      t("plan.table.hung", { step_g: step }),
      t("plan.table.displaced", { step_g: step }),
      t("plan.table.hung", { step_g: finer }),
    ],
    rows: hung.rows.map(({ massG, displacedG, percents }, row) => [
      `${inLocale(String(massG), locale)} g`,
      `${inLocale(threeFigures(displacedG), locale)} g`,
      percent(percents[0]),
      percent(displaced.rows[row]?.percents[0]),
      percent(percents[1]),
    ]),
  };
}
