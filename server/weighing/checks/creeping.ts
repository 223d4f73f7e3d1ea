import type { ProcedureCheck } from "./procedure-check.ts";
import { rises } from "./situation.ts";

/** A reading was taken while its display still crept: bubbles leave, water dries, something leans. */
export const creeping: ProcedureCheck = {
  code: "check.creeping",
  detect(situation) {
    const { dry, wet } = situation;
    const crept = [...wet, ...dry].find((reading) => reading.crept);
    if (crept === undefined) return undefined;
    const role = wet.includes(crept) ? ("wet" as const) : ("dry" as const);
    const bubbles = role === "wet" && !rises(situation);
    return {
      severity: "warn",
      params: { reading: { decimal: crept.text }, unit: crept.unit },
      remedies: [
        ...(bubbles ? [{ code: "check.remedy.wait-for-rest" } as const] : []),
        { code: "check.remedy.take-again", offer: { do: "repeat", role } },
      ],
    };
  },
};
