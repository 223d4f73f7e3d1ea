import { lastPlace } from "../../../calibration/decimal.ts";
import { gramsPerUnit } from "../../../calibration/units.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, type SituationReading } from "./situation.ts";

/**
 * Readings that stand for the same thing show different last places. Coarser at a heavier load is what a balance of
 * two ranges does and is not asked about; anything else is another balance, a changed setting or a typing slip.
 */
export const decimalsChanged: ProcedureCheck = {
  code: "check.decimals-changed",
  detect({ dry, wet, flaskFull = [], dryAfter = [] }) {
    const readings = [...dry, ...flaskFull, ...wet, ...dryAfter];
    for (const [place, reading] of readings.entries())
      for (const other of readings.slice(place + 1)) {
        const [fine, coarse] = stepGrams(reading) < stepGrams(other) ? [reading, other] : [other, reading];
        const same = Math.abs(stepGrams(fine) / stepGrams(coarse) - 1) < 1e-6;
        const heavier = Math.abs(grams(coarse)) > Math.abs(grams(fine)) + 2 * stepGrams(coarse);
        if (same || heavier || fine.unit !== coarse.unit) continue;
        return {
          severity: "warn",
          params: {
            fine: { decimal: fine.text },
            fine_unit: fine.unit,
            coarse: { decimal: coarse.text },
            coarse_unit: coarse.unit,
          },
          remedies: [{ code: "check.remedy.amend-lost-figures" }, { code: "check.remedy.one-balance" }],
        };
      }
    return undefined;
  },
};

const stepGrams = ({ text, unit }: SituationReading) => lastPlace(text) * Number(gramsPerUnit[unit]);
