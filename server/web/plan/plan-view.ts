import type { Message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import { fixed, inLocale, plusMinus } from "../../../views/numbers.ts";
import type { PlanAnswer } from "../../../views/plan/index.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import { type Cause, causeOf } from "../../conformity/alternative.ts";
import type { NotExcluded } from "../../conformity/conformity.ts";
import { askedFirst, plainAnswer } from "../../conformity/plan/plain-answer.ts";
import type { Plan } from "../../conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import { called } from "../../metals/called.ts";
import type { Library } from "../../metals/library.ts";
import { methods } from "../../methods/index.ts";

/** Besides what one asks first, so many of the metals that are not excluded are named. */
const mostOthers = 6;

/** The plan as its page words it. */
export function planAnswer(
  plan: Plan,
  weighing: PlannedWeighing,
  library: Library,
  locale: Locale,
): PlanAnswer {
  const t = tellerOf(locale);
  const { askedAbout, others } = comparedWith(plan, library);
  const expected = (id: string) => expectedOf(id, plan, weighing, library, locale) ?? t("plan.any");
  const left = new Map(plan.cannotExclude.map((one) => [one.metal.id, one]));
  return {
    message: plainAnswer(plan, library),
    ...(plan.possible ? { more: plan.message } : {}),
    facts: [
      ...factsOf(plan, weighing, locale),
      ...(others.length > mostOthers
        ? ([[t("plan.fact.not-told"), t("plan.and-more", { n: others.length - mostOthers })]] as const)
        : []),
    ],
    apart: [
      ...askedAbout.map((metal) => {
        const untold = left.get(metal.id);
        const outside: readonly Sentence[] = [{ code: "plan.reason.outside" }];
        return {
          id: metal.id,
          name: tellValue(called(metal), locale),
          expected: expected(metal.id),
          isSeparated: untold === undefined,
          message: untold ? whyNot(untold, plan, library) : outside,
        };
      }),
      ...others.slice(0, mostOthers).map((one) => ({
        id: one.metal.id,
        name: tellValue(called(one.metal), locale),
        expected: expected(one.metal.id),
        isSeparated: false,
        message: whyNot(one, plan, library),
      })),
    ],
    advice: plan.remedies.map(({ message }) => message),
  };
}

/** What one asks first, and what else is not excluded besides. */
function comparedWith({ possible, claim, cannotExclude }: Plan, library: Library) {
  const askedAbout = possible ? askedFirst(library.metal(claim), library) : [];
  const asked = new Set(askedAbout.map(({ id }) => id));
  return { askedAbout, others: cannotExclude.filter(({ metal }) => !asked.has(metal.id)) };
}

const placesOf = ({ readabilityG }: PlannedWeighing) => Math.max(0, Math.ceil(-Math.log10(readabilityG)));

/** What a piece of the same mass would displace if it were this metal; undefined where its maker is free to choose. */
function expectedOf(id: string, plan: Plan, weighing: PlannedWeighing, library: Library, locale: Locale) {
  if (!library.has(id)) return undefined;
  const claimed = library.metal(plan.claim).densityGPerCm3.nominal;
  const displaced = (plan.expected.displacedG * claimed) / library.metal(id).densityGPerCm3.nominal;
  return `${fixed(displaced, placesOf(weighing), locale)} g`;
}

function factsOf(plan: Plan, weighing: PlannedWeighing, locale: Locale): [string, string][] {
  const t = tellerOf(locale);
  const { dryG, displacedG, immersedG, gPerCm3 } = plan.expected;
  const decimal = (grams: number) => ({ decimal: grams.toFixed(placesOf(weighing)) });
  const wet = methods[weighing.method].plan?.showsWet({
    displaced_g: decimal(displacedG),
    immersed_g: decimal(immersedG),
    displacedGrams: displacedG,
  });
  const shows: [string, string][] = [
    [t("plan.fact.displaced"), `${fixed(displacedG, placesOf(weighing), locale)} g`],
    ...(wet === undefined
      ? []
      : [[t("plan.fact.shows"), t("plan.shows", { dry_g: decimal(dryG), wet })] as [string, string]]),
  ];
  if (!plan.possible) return shows;
  const percent = inLocale(String(+plan.expandedPercent.toPrecision(2)), locale);
  return [
    ...shows,
    [t("plan.fact.density"), `${plusMinus(gPerCm3, plan.expandedGPerCm3, locale)} g/cm³`],
    [t("plan.fact.that-is"), `± ${percent} %`],
  ];
}

const reasons = {
  uncertainty: { code: "plan.reason.uncertainty" },
  band: { code: "plan.reason.band" },
  freedom: { code: "plan.reason.freedom" },
} as const satisfies Record<Cause, Message>;

/** Why the density does not tell it, and what else would. */
function whyNot(one: NotExcluded, { claim }: Plan, library: Library): readonly Sentence[] {
  const separatedBy = one.beside?.separatedBy;
  return [
    reasons[causeOf(one, library.metal(claim))],
    !separatedBy || separatedBy.test === "laboratory"
      ? { code: "plan.reason.laboratory" }
      : separatedBy.message,
  ];
}
