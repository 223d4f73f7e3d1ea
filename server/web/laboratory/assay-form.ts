import { message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import type { AssayEntry } from "../../laboratory/assay.ts";
import { type PreciousMetal, preciousMetals } from "../../metals/precious-metal.ts";
import { type FieldProblem, NumberEntries } from "../evidence/evidence-form.ts";

/** What a form states of a laboratory's report, or every entry that was refused. `today` as 2026-03-02. */
export function typedAssay(
  fields: Readonly<Record<string, string>>,
  { locale, today, standing }: { locale: Locale; today: string; standing: AssayEntry | undefined },
): { body: AssayEntry["body"] } | { problems: readonly FieldProblem[] } {
  const numbers = new NumberEntries(fields, locale);
  const said = (name: string) => (fields[name] ?? "").trim();
  const permille = numbers.text("permille", "form.field.fineness", { from: 1, to: 1000, unit: "‰" });
  const expanded =
    said("expanded") === ""
      ? undefined
      : numbers.text("expanded", "form.field.expanded-uncertainty", { from: 0.001, to: 200, unit: "‰" });
  const k =
    said("k") === ""
      ? undefined
      : numbers.text("k", "form.field.coverage-factor", { from: 1, to: 10, unit: "" });
  if (said("laboratory") === "") numbers.refuse("laboratory", message("assay.refused.no-laboratory"));
  if (said("report") === "") numbers.refuse("report", message("assay.refused.no-report"));
  if (said("method") === "") numbers.refuse("method", message("assay.refused.no-method"));
  const date = said("date");
  if (!isDay(date)) numbers.refuse("date", message("assay.refused.no-day", { day: date }));
  else if (date > today) numbers.refuse("date", message("assay.refused.day-to-come", { day: date, today }));
  if (standing && said("reason") === "") numbers.refuse("reason", message("assay.refused.no-reason"));
  if (numbers.problems.length > 0) return { problems: numbers.problems };
  return {
    body: {
      metal: assayedMetal(fields),
      permille,
      ...(expanded === undefined ? {} : { expanded_permille: expanded, coverage_factor: k ?? "2" }),
      laboratory: said("laboratory"),
      report: said("report"),
      method: said("method"),
      date,
      ...(standing ? { replaces: standing.id, reason: said("reason") } : {}),
      ...(said("by") === "" ? {} : { by: said("by") }),
    },
  };
}

/** The metal a form is about. */
export function assayedMetal({ metal }: Readonly<Record<string, string>>): PreciousMetal {
  return preciousMetals.find((one) => one === metal) ?? "gold";
}

function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
