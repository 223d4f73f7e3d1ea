import { lastPlace } from "../../../calibration/decimal.ts";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { readQuantity } from "../../../calibration/typed-quantity.ts";
import { gramsPerUnit, isMassUnit, massUnits, toGrams } from "../../../calibration/units.ts";
import { type CheckKind, entryName, type GuideEntry, guideOf } from "../../../views/checks/guides.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { decimalMark } from "../../../views/numbers.ts";
import { type CheckWeight, type WeightClass, weightClasses } from "../../checks/check-weights.ts";
import type { FieldProblem } from "../forms/form.ts";

/** What was typed into a guided check, read: masses in g, rows without any entry left out. */
export interface TypedCheck {
  by: string;
  once: Record<string, string>;
  rows: Record<string, string>[];
  /** coarsest last place of the readings, g */
  readabilityGrams: number;
  /** coarsest last place of the temperatures, °C */
  resolutionCelsius: number;
  /** a check weight of that value in g, by class or by its calibration. Throws Refusal when neither was typed. */
  weight(statedGrams: string): CheckWeight;
}

/** Weights are known by their class or by U; the full flask is read by that method only. U of a reference piece is needed. */
const mayBeEmpty = (kind: CheckKind, { name }: GuideEntry) =>
  name === "full" || (kind !== "reference" && (name === "class" || name === "expanded"));
const readings = new Set(["reading", "before", "after", "dry", "full", "wet"]);

/** Reads the form of a guided check, or names every entry that needs another look. */
export function typedCheck(
  kind: CheckKind,
  fields: Record<string, string>,
  locale: Locale,
): TypedCheck | { problems: FieldProblem[] } {
  const guide = guideOf(kind);
  const problems: FieldProblem[] = [];
  const refuse = (fieldId: string, error: Message) => problems.push({ fieldId, error });
  const unit = fields.unit ?? "g";
  if (!isMassUnit(unit)) refuse("unit", message("form.unit.not-listed", { unit, units: massUnits }));
  let readabilityGrams = 0;
  let resolutionCelsius = 0;
  const read = (entry: GuideEntry, row?: number): string => {
    const fieldId = entryName(entry, row);
    const typed = (fields[fieldId] ?? "").trim();
    if (typed === "" && mayBeEmpty(kind, entry)) return "";
    if (entry.unit === "none") {
      if (typed === "") refuse(fieldId, message("form.text.empty"));
      return typed;
    }
    const number = readQuantity(typed, {
      unit: entry.unit === "mass" ? unit : entry.unit === "celsius" ? "°C" : "",
      unitChosen: entry.unit === "mass",
      mark: decimalMark(locale),
      displayed: readings.has(entry.name),
    });
    if (number.kind !== "number") {
      refuse(fieldId, number.says);
      return "0";
    }
    if (entry.unit === "celsius" && entry.name !== "referenceU")
      resolutionCelsius = Math.max(resolutionCelsius, lastPlace(number.text));
    if (entry.unit !== "mass" || !isMassUnit(unit)) return number.text;
    if (readings.has(entry.name))
      readabilityGrams = Math.max(readabilityGrams, lastPlace(number.text) * Number(gramsPerUnit[unit]));
    return toGrams(number.text, unit);
  };
  const once = Object.fromEntries(guide.once.map((entry) => [entry.name, read(entry)]));
  const rows = guide.rows.flatMap((_, index) => {
    const row = index + 1;
    const empty = guide.perRow.every((entry) => (fields[entryName(entry, row)] ?? "").trim() === "");
    if (empty) return [];
    return [Object.fromEntries(guide.perRow.map((entry) => [entry.name, read(entry, row)]))];
  });
  const first = guide.perRow[0];
  if (rows.length === 0 && first) refuse(entryName(first, 1), message("bench-check.entry.nothing-read"));
  const by = (fields.by ?? "").trim();
  if (by === "") refuse("by", message("bench-check.entry.unsigned"));
  const typedClass = (once.class ?? "").toUpperCase();
  const weightClass = weightClasses.find((one) => one === typedClass);
  if (typedClass !== "" && !weightClass)
    refuse(
      "class",
      message("bench-check.entry.no-class", { typed: once.class ?? "", classes: { anyOf: weightClasses } }),
    );
  if (problems.length > 0) return { problems };
  const weight = (stated: string) => weightOf(Number(stated), weightClass, once.expanded ?? "");
  return { by, once, rows, readabilityGrams, resolutionCelsius, weight };
}

function weightOf(grams: number, weightClass: WeightClass | undefined, expanded: string): CheckWeight {
  if (weightClass) return { nominalGrams: grams, class: weightClass };
  if (expanded !== "" && Number(expanded) > 0)
    return { nominalGrams: grams, calibrated: { conventionalGrams: grams, expandedGrams: Number(expanded) } };
  throw new Refusal("bench-check.entry.weight-unknown", { classes: { anyOf: weightClasses } }, "class");
}
