import { message } from "../../../calibration/message.ts";
import { readNumber } from "../../../calibration/typed-number.ts";
import { isMassUnit, toGrams } from "../../../calibration/units.ts";
import type { FieldError } from "../../../views/forms.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { decimalMark } from "../../../views/numbers.ts";
import type { PlanForm } from "../../../views/plan/index.tsx";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import type { Library } from "../../metals/library.ts";
import type { Conditions } from "../../weighing/conditions.ts";
import { plannedOn } from "../../weighing/planned-on.ts";
import { balanceFor } from "../../weighing/request.ts";

export type PlanProblems = { fieldId: keyof PlanForm; error: FieldError }[];

/** The weighing that the form describes, with what the bench knows of itself; or each entry that needs another look. */
export function plannedFrom(
  form: PlanForm,
  conditions: Conditions,
  library: Library,
  locale: Locale,
): { planned: PlannedWeighing } | { problems: PlanProblems } {
  const problems: PlanProblems = [];
  const grams = (field: "mass" | "readability" | "repeatability", unit: string): number => {
    const read = readNumber(form[field], { mark: decimalMark(locale) });
    if (read.kind !== "number") problems.push({ fieldId: field, error: read.says });
    else if (!isMassUnit(unit))
      problems.push({ fieldId: field, error: message("plan.refusal.unit", { unit }) });
    else if (Number(read.text) > 0) return Number(toGrams(read.text, unit));
    else
      problems.push({
        fieldId: field,
        error: message("plan.refusal.not-above-zero", {
          typed: form[field],
          such_as: { decimal: examples[field] },
        }),
      });
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
      error: message("plan.refusal.pieces-typed", { typed: form.pieces }),
    });
  if (!library.has(form.claim))
    problems.push({
      fieldId: "claim",
      error: message("metal.refusal.not-in-list", { id: form.claim }),
    });
  if (problems.length > 0) return { problems };
  return {
    planned: {
      claim: form.claim,
      method: form.method,
      massG,
      pieces,
      ...plannedOn(
        balanceFor(
          { dry: [], wet: [], steps: { dry_g: String(readabilityG) } },
          repeatabilityG === undefined
            ? conditions
            : { ...conditions, repeatabilityGrams: String(repeatabilityG) },
        ),
        conditions,
      ),
    },
  };
}

const examples = { mass: "31.1", readability: "0.01", repeatability: "0.005" } as const;
