import { purities } from "../../../calibration/liquid.ts";
import { isMassUnit } from "../../../calibration/units.ts";
import type { FieldError } from "../../../views/forms.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale, readNumber } from "../../../views/numbers.ts";
import type { NumberField } from "../../../views/settings/index.tsx";
import { isMethod } from "../../methods/index.ts";
import {
  type BenchSettings,
  guardBandRange,
  metalGroups,
  ruleChoices,
  secondUnits,
} from "../../station/bench-settings.ts";
import { type Conditions, conditionsShape } from "../../weighing/conditions.ts";

type NumberKey = Exclude<keyof Conditions, "purity">;

interface NumberAsked {
  key: NumberKey;
  unit: string;
  mayBeEmpty?: true;
}

/** The numbers of a bench in the order they are asked; their words stand with the page. */
const numbers: { balance: readonly NumberAsked[]; around: readonly NumberAsked[] } = {
  balance: [
    { key: "repeatabilityGrams", unit: "g", mayBeEmpty: true },
    { key: "immersedRepeatabilityGrams", unit: "g", mayBeEmpty: true },
    { key: "linearityGrams", unit: "g" },
    { key: "confidencePercent", unit: "%" },
  ],
  around: [
    { key: "thermometerHalfWidthCelsius", unit: "°C" },
    { key: "dissolvedSolidsMgPerL", unit: "mg/L" },
    { key: "altitudeMetres", unit: "m" },
    { key: "wireMillimetres", unit: "mm" },
    { key: "bubbleAllowanceMg", unit: "mg" },
  ],
};

type Problems = { fieldId: string; error: FieldError }[];

/** The numbers as the page shows them: what was typed while it is refused, else what counts. */
export function numberFields(
  conditions: Conditions,
  typed: Record<string, string>,
  locale: Locale,
): { balance: NumberField[]; around: NumberField[] } {
  const t = tellerOf(locale);
  const drawn = ({ key, unit }: NumberAsked): NumberField => ({
    name: key,
    label: t(`settings.numbers.${key}.label`),
    unit,
    value: typed[key] ?? inLocale(conditions[key], locale),
    ...(t(`settings.numbers.${key}.hint`) === "" ? {} : { hint: t(`settings.numbers.${key}.hint`) }),
  });
  return { balance: numbers.balance.map(drawn), around: numbers.around.map(drawn) };
}

/** What the form of the bench says, or each entry that needs another look. All of it counts or none. */
export function benchSettingsFrom(
  fields: Record<string, string>,
  locale: Locale,
  now: BenchSettings,
):
  | {
      settings: Pick<
        BenchSettings,
        "method" | "metal" | "scaleStep" | "secondUnit" | "conditions" | "decisionRule"
      >;
    }
  | { problems: Problems } {
  const problems: Problems = [];
  const conditions: Record<string, string> = {};
  for (const asked of [...numbers.balance, ...numbers.around]) {
    const read = numberOf(asked, fields[asked.key] ?? "", locale);
    if ("error" in read) problems.push({ fieldId: asked.key, error: read.error });
    else conditions[asked.key] = read.text;
  }
  const step = readNumber(fields.scaleStep ?? "", locale);
  const unit = fields.scaleStepUnit ?? "g";
  if (step.kind !== "number") problems.push({ fieldId: "scaleStep", error: step.says });
  else if (!(Number(step.text) > 0 && Number(step.text) <= 1000))
    problems.push({ fieldId: "scaleStep", error: stepError(step.text) });
  if (!isMassUnit(unit))
    problems.push({ fieldId: "scaleStep", error: `The unit "${unit}" is not in the list.` });
  const decisionRule = ruleFrom(fields, locale, now.decisionRule);
  if (decisionRule === undefined)
    problems.push({
      fieldId: "ruleMultiple",
      error: {
        what: tellerOf(locale)("decision.multiple-wrong.what"),
        right: tellerOf(locale)("decision.multiple-wrong.right"),
        todo: tellerOf(locale)("decision.multiple-wrong.todo"),
        value: fields.ruleMultiple ?? "",
      },
    });
  const { method = "", metal = "", water = "" } = fields;
  const group = metalGroups.find((one) => one === metal);
  const purity = purities.find((one) => one === water);
  if (!isMethod(method)) problems.push(notOffered("method", "The way to weigh", method));
  if (!group) problems.push(notOffered("metal", "The metal", metal));
  if (!purity) problems.push(notOffered("water", "The water", water));
  if (!isMethod(method) || !group || !purity || step.kind !== "number" || !decisionRule) return { problems };
  if (problems.length > 0) return { problems };
  return {
    settings: {
      method,
      metal: group,
      scaleStep: { text: step.text, unit },
      // A form from before there was a choice leaves it as it is.
      secondUnit: secondUnits.find((one) => one === fields.secondUnit) ?? now.secondUnit,
      decisionRule,
      conditions: conditionsShape.parse({ ...conditions, purity }),
    },
  };
}

/** The rule as chosen; as it is where the form does not ask for it. Undefined when its guard band is no width. */
function ruleFrom(
  { rule, ruleMultiple }: Record<string, string>,
  locale: Locale,
  now: BenchSettings["decisionRule"],
): BenchSettings["decisionRule"] | undefined {
  const kind = ruleChoices.find((one) => one === rule) ?? now.kind;
  if (ruleMultiple === undefined) return { ...now, kind };
  const read = readNumber(ruleMultiple, locale);
  const { from, to } = guardBandRange;
  if (read.kind !== "number" || !(Number(read.text) >= from && Number(read.text) <= to)) return undefined;
  return { kind, multiple: read.text };
}

function numberOf(
  asked: NumberAsked,
  typed: string,
  locale: Locale,
): { text: string } | { error: FieldError } {
  const { key, unit, mayBeEmpty } = asked;
  const t = tellerOf("en");
  if (mayBeEmpty && typed.trim() === "") return { text: "" };
  const read = readNumber(typed, locale);
  if (read.kind !== "number") return { error: `${t(`settings.numbers.${key}.label`)}: ${read.says}` };
  const checked = conditionsShape.shape[key].safeParse(read.text);
  if (checked.success) return { text: read.text };
  return {
    error: {
      what: `${t(`settings.numbers.${key}.label`)} ${outOf(checked.error.issues[0])}.`,
      value: `${typed.trim()} ${unit}`,
      right: mayBeEmpty ? "Right: a number in that range, or nothing." : "Right: a number in that range.",
      todo: "Correct it and keep again.",
    },
  };
}

/** The sentence of the range; a union carries it inside the branch that is not "empty". */
function outOf(
  issue: { message: string; code?: string; errors?: { message: string }[][] } | undefined,
): string {
  return issue?.errors?.at(-1)?.[0]?.message ?? issue?.message ?? "is out of range";
}

const stepError = (text: string): FieldError => ({
  what: "The smallest step is not a number above 0 and up to 1000.",
  value: text,
  right: "Right: what the last digit counts, such as 0.01.",
  todo: "Read it off the scale's display.",
});

const notOffered = (fieldId: string, what: string, value: string) => ({
  fieldId,
  error: {
    what: `${what} is none of those offered.`,
    value,
    right: "Right: one of the list.",
    todo: "Choose again.",
  },
});
