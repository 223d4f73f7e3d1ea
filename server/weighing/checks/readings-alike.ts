import type { ProcedureCheck } from "./procedure-check.ts";
import { repeatedIn } from "./repeated-readings.ts";

/**
 * Neighbouring readings of one load resemble each other more than chance allows: a draught, warming or a slow drift moves
 * several of them together, so they count as fewer than they are.
 */
export const readingsAlike: ProcedureCheck = {
  code: "check.readings-alike",
  detect(situation) {
    const load = repeatedIn(situation).find(({ found }) => found.serial.verdict !== "agree");
    if (load === undefined || load.found.trend.verdict !== "agree") return undefined;
    const { role, offers, readings, found } = load;
    const counted = Math.min(readings.length, Math.max(1, (2 * found.s) / found.span) ** 2);
    return {
      severity: "warn",
      params: {
        role,
        count: readings.length,
        counted,
        correlation: found.serial.correlation,
        p: found.serial.p,
      },
      remedies: [
        { code: "check.remedy.no-draught" },
        { code: "check.remedy.repeat-undisturbed", offer: { do: "repeat", role: offers } },
      ],
    };
  },
};
