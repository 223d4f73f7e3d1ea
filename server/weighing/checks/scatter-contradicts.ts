import { chiSquareAbove } from "../../../calibration/chi-square.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, type Situation, type SituationReading, scatterGrams } from "./situation.ts";

/** Probability below which repeats contradict the stated scatter: one in a thousand runs that are as stated. */
const contradictionLevel = 0.001;

/**
 * Repeats scatter more than the balance was stated to: χ² = (n − 1) s²/σ² with n − 1 degrees of freedom, one-sided
 * (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.8). σ is the stated standard deviation of one reading with
 * its two roundings; the level 0.001 is this program's choice, so that a sound run is stopped once in a thousand.
 */
export const scatterContradicts: ProcedureCheck = {
  code: "check.scatter-contradicts",
  look(situation) {
    for (const [role, readings] of rolesOf(situation)) {
      if (readings.length < 2) continue;
      const stated = scatterGrams(situation, role);
      const found = deviation(readings.map(grams));
      const chiSquare = (readings.length - 1) * (found / stated) ** 2;
      if (chiSquareAbove(chiSquare, readings.length - 1) >= contradictionLevel) continue;
      return {
        severity: "stop",
        params: {
          role: role === "dry" ? "dry" : situation.method,
          count: readings.length,
          found_g: found,
          stated_g: stated,
          chi_square: chiSquare,
          level: contradictionLevel,
        },
        remedies: [
          { code: "check.remedy.repeat-undisturbed", offer: { do: "repeat", role } },
          { code: "check.remedy.state-the-scatter" },
        ],
      };
    }
    return undefined;
  },
};

/** The loads of a situation whose repeats should agree. */
function rolesOf({ dry, wet }: Situation): (readonly ["dry" | "wet", readonly SituationReading[]])[] {
  return [
    ["dry", dry],
    ["wet", wet],
  ];
}

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
