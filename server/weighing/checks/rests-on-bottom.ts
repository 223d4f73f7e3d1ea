import { solidMetal } from "../../metals/possible-densities.ts";
import { displacedForImmersed } from "./displaced-for-immersed.ts";
import { floats } from "./floats.ts";
import { nothingOnHook } from "./nothing-on-hook.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { soFar } from "./situation.ts";

/** Lighter than any solid metal: the floor of the beaker, or its wall, carries part or all of the piece. */
export const restsOnBottom: ProcedureCheck = {
  code: "check.rests-on-bottom",
  detect(situation) {
    const now = soFar(situation);
    if (now === undefined || now.dryGrams <= 0 || now.displacedGrams <= 0) return undefined;
    if (now.gPerCm3 >= solidMetal.low) return undefined;
    if (
      [floats, nothingOnHook, displacedForImmersed].some(({ detect: look }) => look(situation) !== undefined)
    )
      return undefined;
    if (now.gPerCm3 < 0.9) return undefined;
    const whole = now.displacedGrams > 0.97 * now.dryGrams;
    return {
      severity: "stop",
      params: { displaced_g: now.displacedGrams, density_g_cm3: now.gPerCm3, case: whole ? "whole" : "part" },
      remedies: [
        { code: "check.remedy.lift-and-wait", offer: { do: "repeat", role: "wet", instead: true } },
        { code: "check.remedy.so-light" },
      ],
    };
  },
};
