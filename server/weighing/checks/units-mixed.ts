import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, type SituationReading } from "./situation.ts";

/** The unit key was pressed in mid-run: readings of one piece carry different units. */
export const unitsMixed: ProcedureCheck = {
  code: "check.units-mixed",
  detect({ dry, wet, flaskFull = [], dryAfter = [], zeros = [] }) {
    const readings = [...dry, ...flaskFull, ...zeros, ...wet, ...dryAfter].sort(byTime);
    const first = readings[0];
    const other = readings.find(({ unit }) => unit !== first?.unit);
    if (first === undefined || other === undefined) return undefined;
    return {
      severity: "stop",
      params: {
        first: { decimal: first.text },
        first_unit: first.unit,
        other: { decimal: other.text },
        other_unit: other.unit,
        other_g: grams(other),
      },
      remedies: [
        { code: "check.remedy.set-unit-back", params: { unit: first.unit } },
        { code: "check.remedy.keep-units" },
      ],
    };
  },
};

const byTime = (a: SituationReading, b: SituationReading) => a.at.localeCompare(b.at);
