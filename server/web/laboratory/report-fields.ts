import { message } from "../../../calibration/message.ts";
import { preciousMetals } from "../../metals/precious-metal.ts";
import { type Entries, refuse } from "../forms/form.ts";

/** What a laboratory found, as each form that takes its report asks for it. */
export const foundFields = ({ choice, decimal, maybeDecimal }: Entries) => ({
  metal: choice(preciousMetals, { first: "gold" }),
  permille: decimal({ from: 1, to: 1000, unit: "‰", what: message("form.field.fineness") }),
  expanded: maybeDecimal({
    from: 0.001,
    to: 200,
    unit: "‰",
    what: message("form.field.expanded-uncertainty"),
  }),
});

/** Whose report it is; its day is not after `today` (2026-03-02). */
export const reportFields = ({ text, day }: Entries, today: string) => ({
  laboratory: text({ missing: message("assay.refused.no-laboratory") }),
  report: text({ missing: message("assay.refused.no-report") }),
  method: text({ missing: message("assay.refused.no-method") }),
  date: day().superRefine((date, context) => {
    if (date > today) refuse(context, message("assay.refused.day-to-come", { day: date, today }));
  }),
});
