import { z } from "zod";
import { lastPlace } from "../../../calibration/decimal.ts";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { gramsPerUnit, isMassUnit, type MassUnit, massUnits, toGrams } from "../../../calibration/units.ts";
import { type CheckKind, entryName, type GuideEntry, guideOf } from "../../../views/checks/guides.ts";
import { type CheckWeight, type WeightClass, weightClasses } from "../../checks/check-weights.ts";
import { type Entries, type Form, refuseEntry } from "../forms/form.ts";

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

/** The form of a guided check, with the rows that anything was typed into. */
export const checkForm =
  (kind: CheckKind): Form<TypedCheck> =>
  (entry, fields) => {
    const guide = guideOf(kind);
    const rows = guide.rows
      .map((_, index) => index + 1)
      .filter((row) => guide.perRow.some((one) => (fields[entryName(one, row)] ?? "").trim() !== ""));
    const nothingRead = message("bench-check.entry.nothing-read");
    const first = guide.perRow[0] && entryName(guide.perRow[0], 1);
    const unit = isMassUnit(fields.unit ?? "g") ? ((fields.unit ?? "g") as MassUnit) : "g";
    const asked = entryOf(kind, unit, entry);
    const named = (entries: readonly GuideEntry[], row?: number) =>
      entries.map((one) => [entryName(one, row), asked(one)] as const);
    const numbers: Record<string, z.ZodType<string>> = {
      ...(rows.length === 0 && first ? { [first]: entry.text({ missing: nothingRead }) } : {}),
      ...Object.fromEntries([...named(guide.once), ...rows.flatMap((row) => named(guide.perRow, row))]),
    };
    const signed = z.object({
      unit: entry.choice(massUnits, {
        first: "g",
        wrong: (unit) => message("form.unit.not-listed", { unit, units: massUnits }),
      }),
      by: entry.text({ missing: message("bench-check.entry.unsigned") }),
    });
    return z
      .intersection(signed, z.object(numbers))
      .transform(({ by, ...of }: { by: string } & Record<string, string>, context): TypedCheck => {
        const value = (one: GuideEntry, row?: number) => of[entryName(one, row)] ?? "";
        const grams = (one: GuideEntry, row?: number) => {
          const text = value(one, row);
          return one.unit === "mass" && text !== "" ? toGrams(text, unit) : text;
        };
        const all = [
          ...guide.once.map((one) => [one, value(one)] as const),
          ...rows.flatMap((row) => guide.perRow.map((one) => [one, value(one, row)] as const)),
        ];
        const coarsest = (of: (one: GuideEntry) => boolean) =>
          Math.max(0, ...all.flatMap(([one, text]) => (of(one) && text !== "" ? [lastPlace(text)] : [])));
        const once = Object.fromEntries(guide.once.map((one) => [one.name, grams(one)]));
        const weightClass = weightClasses.find((one) => one === once.class?.toUpperCase());
        if (once.class && !weightClass)
          refuseEntry(
            context,
            "class",
            message("bench-check.entry.no-class", { typed: once.class, classes: { anyOf: weightClasses } }),
          );
        return {
          by,
          once,
          rows: rows.map((row) => Object.fromEntries(guide.perRow.map((one) => [one.name, grams(one, row)]))),
          readabilityGrams: coarsest(({ name }) => readings.has(name)) * Number(gramsPerUnit[unit]),
          resolutionCelsius: coarsest(({ name, unit }) => unit === "celsius" && name !== "referenceU"),
          weight: (stated) => weightOf(Number(stated), weightClass, once.expanded ?? ""),
        };
      });
  };

/** How each entry of a guided check is read. */
const entryOf =
  (kind: CheckKind, unit: MassUnit, { text, typed, decimal, maybeDecimal }: Entries) =>
  (one: GuideEntry): z.ZodType<string> => {
    const empty = mayBeEmpty(kind, one);
    if (one.unit === "none") return empty ? typed() : text();
    const asked = {
      unit: one.unit === "mass" ? unit : one.unit === "celsius" ? "°C" : "",
      unitChosen: one.unit === "mass",
      displayed: readings.has(one.name),
    };
    return empty ? maybeDecimal(asked).transform((value = "") => value) : decimal(asked);
  };

function weightOf(grams: number, weightClass: WeightClass | undefined, expanded: string): CheckWeight {
  if (weightClass) return { nominalGrams: grams, class: weightClass };
  if (expanded !== "" && Number(expanded) > 0)
    return { nominalGrams: grams, calibrated: { conventionalGrams: grams, expandedGrams: Number(expanded) } };
  throw new Refusal("bench-check.entry.weight-unknown", { classes: { anyOf: weightClasses } }, "class");
}
