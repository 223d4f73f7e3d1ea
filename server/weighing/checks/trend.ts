import type { ProcedureCheck } from "./procedure-check.ts";
import { grams } from "./situation.ts";

/** So many readings, each beyond the one before on the same side, come by chance in 2/n!: 0.04 % for 7. */
const enough = 7;

/** Readings of one load that should rest run one way without a single step back, however small the steps. */
export const trend: ProcedureCheck = {
  code: "check.trend",
  look({ method, dry, wet }) {
    for (const [role, readings] of [["dry", dry] as const, ["wet", wet] as const]) {
      const values = readings.map(grams);
      const steps = values.slice(1).map((value, place) => value - values[place]!);
      const oneWay = steps.every((step) => step > 0) || steps.every((step) => step < 0);
      if (values.length < enough || !oneWay) continue;
      return {
        severity: "stop",
        params: {
          role: role === "dry" ? "dry" : method,
          count: values.length,
          first_g: values[0]!,
          last_g: values.at(-1)!,
        },
        remedies: [
          { code: "check.remedy.wait-for-rest" },
          { code: "check.remedy.repeat-undisturbed", offer: { do: "repeat", role } },
        ],
      };
    }
    return undefined;
  },
};
