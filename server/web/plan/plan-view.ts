import { measure } from "../../../calibration/measure.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { fixed, inLocale, plusMinus } from "../../../views/numbers.ts";
import type { PlanAnswer, PlanPage } from "../../../views/plan/index.tsx";
import type { LookAlike } from "../../conformity/look-alike.ts";
import type { Plan } from "../../conformity/plan/plan.ts";
import { planTable } from "../../conformity/plan/plan-table.ts";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import { inOneSentence, usualSuspects } from "../../conformity/plan/usual-suspects.ts";
import type { Library } from "../../metals/library.ts";
import { methods } from "../../methods/index.ts";

/** Besides what one asks first, so many of the metals that stay alive are named. */
const mostOthers = 6;
/** Masses of the printed table, g: a small ring to a heavy bar, with the troy ounce. */
const masses = [1, 2, 5, 10, 20, 31.1, 50, 100, 250];

/** The plan as its page words it. */
export function planAnswer(
  plan: Plan,
  { readabilityG, method }: PlannedWeighing,
  library: Library,
  locale: Locale,
): PlanAnswer {
  const places = Math.max(0, Math.ceil(-Math.log10(readabilityG)));
  const grams = (value: number) => `${fixed(value, places, locale)} g`;
  const { dryG, displacedG, immersedG, gPerCm3 } = plan.expected;
  const claimed = library.metal(plan.claim).densityGPerCm3.nominal;
  const shown = (id: string) =>
    library.has(id) ? grams((displacedG * claimed) / library.metal(id).densityGPerCm3.nominal) : "any";
  const alive = new Map(plan.cannotExclude.map((one) => [one.id, one]));
  const suspects = plan.possible ? usualSuspects(library.metal(plan.claim), library) : [];
  const asked = new Set(suspects.map(({ id }) => id));
  const inFamily = new Set(
    plan.cannotExclude.flatMap(({ id }) => (library.has(id) ? (library.metal(id).recipes ?? []) : [])),
  );
  const others = plan.cannotExclude.filter(({ id }) => !asked.has(id) && !inFamily.has(id));
  return {
    says: inOneSentence(plan, library),
    ...(plan.possible ? { more: plan.says } : {}),
    facts: [
      ["Displaced mass, if it is what it is said to be", grams(displacedG)],
      [
        "The scale would then show",
        `${grams(dryG)} dry, ${methods[method].plan?.showsWet({ displaced: grams(displacedG), immersed: grams(immersedG), displacedGrams: displacedG }) ?? ""}`,
      ],
      ...(plan.possible
        ? ([
            ["Density", `${plusMinus(gPerCm3, plan.expandedGPerCm3, locale)} g/cm³`],
            ["That is", `± ${inLocale(String(+plan.expandedPercent.toPrecision(2)), locale)} %`],
          ] as const)
        : []),
      ...(others.length > mostOthers
        ? ([["Not told apart besides those below", `${others.length - mostOthers} more`]] as const)
        : []),
    ],
    apart: [
      ...suspects.map(({ id, name }) => {
        const untold = alive.get(id);
        return {
          id,
          name,
          expected: shown(id),
          told: untold === undefined,
          says: untold ? whyNot(untold) : "its band lies outside what this weighing would find",
        };
      }),
      ...others.slice(0, mostOthers).map((one) => ({
        id: one.id,
        name: one.name,
        expected: shown(one.id),
        told: false,
        says: whyNot(one),
      })),
    ],
    advice: plan.remedies.map(({ says }) => `${says.charAt(0).toUpperCase()}${says.slice(1)}`),
  };
}

const reasons = {
  uncertainty: "a finer density would separate them",
  band: "no density separates them",
  freedom: "its maker is free to choose its density",
} as const;

function whyNot({ why, separatedBy }: LookAlike): string {
  const other =
    separatedBy.test === "laboratory" ? "of other tests only a licensed laboratory's does" : separatedBy.says;
  return `${reasons[why]}; ${other.charAt(0).toLowerCase()}${other.slice(1)}`;
}

/** 1.06 and 6.44, but 1610 and not 1.61e+3. */
const threeFigures = (grams: number) =>
  grams < 1000 ? grams.toPrecision(3) : `${Number(grams.toPrecision(3))}`;

/** What this scale reaches for the claim, by mass and way of weighing, and what ten times finer steps would: for printing. */
export function planTableFor(
  planned: PlannedWeighing,
  library: Library,
  locale: Locale,
): NonNullable<PlanPage["table"]> {
  const step = planned.readabilityG;
  const finer = +(step / 10).toPrecision(6);
  const { massG: _m, readabilityG: _r, ...base } = planned;
  const hung = planTable({ ...base, method: "hung" }, masses, [step, finer], measure, library);
  const displaced = planTable({ ...base, method: "displaced" }, masses, [step], measure, library);
  const percent = (value: number | null | undefined) =>
    value === null || value === undefined
      ? "no answer"
      : `± ${inLocale(String(+value.toPrecision(2)), locale)} %`;
  const text = (value: number) => inLocale(String(value), locale);
  return {
    caption: `${hung.name}${planned.pieces > 1 ? `, ${planned.pieces} pieces together` : ""}: how well the density comes out, ${text(planned.confidence * 100)} % of the time`,
    heads: [
      planned.pieces > 1 ? "Mass of one" : "Mass",
      "displaces",
      `hung, steps of ${text(step)} g`,
      `water on the scale, steps of ${text(step)} g`,
      `hung, steps of ${text(finer)} g`,
    ],
    rows: hung.rows.map(({ massG, displacedG, percents }, row) => [
      `${text(massG)} g`,
      `${inLocale(threeFigures(displacedG), locale)} g`,
      percent(percents[0]),
      percent(displaced.rows[row]?.percents[0]),
      percent(percents[1]),
    ]),
  };
}
