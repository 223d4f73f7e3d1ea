import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import { type AssayEntry, standingAssay } from "../../laboratory/assay.ts";
import type { Entry } from "../../ledger/entry.ts";
import { type PreciousMetal, preciousMetals } from "../../metals/precious-metal.ts";
import { type Form, refuse } from "../forms/form.ts";

/**
 * What a form states of a laboratory's report: the day is not after `today` (2026-03-02), and another result says why.
 * It is held against what the page of the form showed, so that a form sent twice is read the same twice.
 */
export const assayForm =
  ({ today, entries }: { today: string; entries: readonly Entry[] }): Form<AssayEntry["body"]> =>
  ({ choice, decimal, maybeDecimal, text, maybeText, day }, { metal, version = entries.length }) => {
    const standing = standingAssay(entries.slice(0, Number(version)), assayedMetal(metal));
    return z
      .object({
        metal: choice(preciousMetals, { first: "gold" }),
        permille: decimal({ from: 1, to: 1000, unit: "‰", what: message("form.field.fineness") }),
        expanded: maybeDecimal({
          from: 0.001,
          to: 200,
          unit: "‰",
          what: message("form.field.expanded-uncertainty"),
        }),
        k: maybeDecimal({ from: 1, to: 10, what: message("form.field.coverage-factor") }),
        laboratory: text({ missing: message("assay.refused.no-laboratory") }),
        report: text({ missing: message("assay.refused.no-report") }),
        method: text({ missing: message("assay.refused.no-method") }),
        date: day().superRefine((date, context) => {
          if (date > today) refuse(context, message("assay.refused.day-to-come", { day: date, today }));
        }),
        reason: standing ? text({ missing: message("assay.refused.no-reason") }) : maybeText(),
        by: maybeText(),
      })
      .transform(({ expanded, k = "2", reason, ...stated }): AssayEntry["body"] =>
        omitUndefined({
          ...stated,
          expanded_permille: expanded,
          coverage_factor: expanded === undefined ? undefined : k,
          replaces: standing?.id,
          reason: standing ? reason : undefined,
        }),
      );
  };

/** The metal a form is about. */
function assayedMetal(metal: string | undefined): PreciousMetal {
  return preciousMetals.find((one) => one === metal) ?? "gold";
}
