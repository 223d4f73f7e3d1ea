import { measure } from "../../../calibration/measure.ts";
import { message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { PlanPage } from "../../../views/plan/index.tsx";
import { planTable } from "../../conformity/plan/plan-table.ts";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import type { Library } from "../../metals/library.ts";
import { screeningMethods } from "../../methods/index.ts";

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
  const tables = screeningMethods.map((method) =>
    planTable({ ...base, method }, masses, [step, finer], measure, library),
  );
  // every way on this scale, and the first one on a finer scale too
  const columns = [
    ...tables.map((table) => ({ table, scale: 0 })),
    ...tables.slice(0, 1).map((table) => ({ table, scale: 1 })),
  ];
  const [first] = tables;
  const percent = (value: number | null | undefined) =>
    value === null || value === undefined
      ? t("plan.table.no-answer")
      : `± ${inLocale(String(+value.toPrecision(2)), locale)} %`;
  const { pieces, confidence } = planned;
  return {
    caption: t("plan.table.caption", {
      claim: first?.called ?? planned.claim,
      pieces,
      confidence_percent: +(100 * confidence).toPrecision(6),
    }),
    heads: [
      t("plan.table.mass", { pieces }),
      t("plan.table.displaces"),
      ...columns.map(({ table, scale }) =>
        t("plan.table.by", {
          method: message(`method.${table.method}.name`),
          step_g: table.readabilitiesG[scale] ?? step,
        }),
      ),
    ],
    rows: (first?.rows ?? []).map(({ massG, displacedG }, row) => [
      `${inLocale(String(massG), locale)} g`,
      `${inLocale(threeFigures(displacedG), locale)} g`,
      ...columns.map(({ table, scale }) => percent(table.rows[row]?.percents[scale])),
    ]),
  };
}
