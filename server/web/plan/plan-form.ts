import { isMassUnit, toGrams } from "../../../calibration/units.ts";
import type { FieldError } from "../../../views/forms.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { readNumber } from "../../../views/numbers.ts";
import type { PlanForm } from "../../../views/plan/index.tsx";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import type { Library } from "../../metals/library.ts";
import type { Conditions } from "../../weighing/conditions.ts";

export type PlanProblems = { fieldId: keyof PlanForm; error: FieldError }[];

const sqrt3 = Math.sqrt(3);

/** The weighing that the form describes, with what the bench knows of itself; or each entry that needs another look. */
export function plannedFrom(
  form: PlanForm,
  conditions: Conditions,
  library: Library,
  locale: Locale,
): { planned: PlannedWeighing } | { problems: PlanProblems } {
  const problems: PlanProblems = [];
  const grams = (field: "mass" | "readability" | "repeatability", unit: string): number => {
    const read = readNumber(form[field], locale);
    if (read.kind !== "number") problems.push({ fieldId: field, error: read.says });
    else if (!isMassUnit(unit))
      problems.push({ fieldId: field, error: `The unit "${unit}" is not in the list.` });
    else if (Number(read.text) > 0) return Number(toGrams(read.text, unit));
    else problems.push({ fieldId: field, error: `"${form[field]}" is not above zero. ${examples[field]}` });
    return Number.NaN;
  };
  const massG = grams("mass", form.massUnit);
  const readabilityG = grams("readability", form.readabilityUnit);
  const repeatabilityG =
    form.repeatability.trim() === "" ? undefined : grams("repeatability", form.readabilityUnit);
  const pieces = Number(form.pieces.trim() || "1");
  if (!Number.isInteger(pieces) || pieces < 1 || pieces > 1000)
    problems.push({
      fieldId: "pieces",
      error: `"${form.pieces}" pieces: right is a whole number from 1 to 1000.`,
    });
  if (!library.has(form.claim))
    problems.push({
      fieldId: "claim",
      error: `No metal is called "${form.claim}" here. Right: one of the list.`,
    });
  if (problems.length > 0) return { problems };
  return {
    planned: {
      claim: form.claim,
      method: form.method,
      massG,
      readabilityG,
      pieces,
      ...(repeatabilityG === undefined ? {} : { repeatabilityG }),
      linearityG: Number(conditions.linearityGrams),
      wireMm: Number(conditions.wireMillimetres),
      uCelsius: Number(conditions.thermometerHalfWidthCelsius) / sqrt3,
      confidence: Number(conditions.confidencePercent) / 100,
    },
  };
}

const examples = {
  mass: "Right: about what the piece weighs, such as 31.1.",
  readability: "Right: what the last digit counts, such as 0.01.",
  repeatability: "Right: the standard deviation of a few readings of one piece, or nothing.",
} as const;
