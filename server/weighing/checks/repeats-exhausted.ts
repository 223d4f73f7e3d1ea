import type { ProcedureCheck } from "./procedure-check.ts";

/** Below this fraction gained, another immersion is work for nothing. */
const worthwhile = 0.1;

/** More repeats will not help: what is left of the uncertainty is not scatter. */
export const repeatsExhausted: ProcedureCheck = {
  code: "check.repeats-exhausted",
  detect({ density, repeatsShare, wet }) {
    if (density === undefined || repeatsShare === undefined || wet.length < 3) return undefined;
    const floor = density.expandedGPerCm3 * Math.sqrt(1 - repeatsShare);
    if (1 - floor / density.expandedGPerCm3 >= worthwhile) return undefined;
    return {
      severity: "warn",
      params: { percent: repeatsShare * 100, from_g_cm3: density.expandedGPerCm3, to_g_cm3: floor },
      remedies: [{ code: "check.remedy.largest-bar" }, { code: "check.remedy.pool-or-finer" }],
    };
  },
};
