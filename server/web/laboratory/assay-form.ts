import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import { type AssayEntry, standingAssay } from "../../laboratory/assay.ts";
import type { Entry } from "../../ledger/entry.ts";
import { type PreciousMetal, preciousMetals } from "../../metals/precious-metal.ts";
import type { Form } from "../forms/form.ts";
import { foundFields, reportFields } from "./report-fields.ts";

/**
 * What a form states of a laboratory's report: the day is not after `today` (2026-03-02), and another result says why.
 * It is held against what the page of the form showed, so that a form sent twice is read the same twice.
 */
export const assayForm =
  ({ today, entries }: { today: string; entries: readonly Entry[] }): Form<AssayEntry["body"]> =>
  (entered, { metal, version = entries.length }) => {
    const { maybeDecimal, maybeText, text } = entered;
    const standing = standingAssay(entries.slice(0, Number(version)), assayedMetal(metal));
    return z
      .object({
        ...foundFields(entered),
        k: maybeDecimal({ from: 1, to: 10, what: message("form.field.coverage-factor") }),
        ...reportFields(entered, today),
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
