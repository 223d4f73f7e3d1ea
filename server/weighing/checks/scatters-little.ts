import type { ProcedureCheck } from "./procedure-check.ts";
import { repeatedIn } from "./repeated-readings.ts";

/**
 * Readings of one load that scatter much less than was stated: looks at one load that was not lifted in between hang
 * together and do so, and their mean is known no better than one of them; or the stated scatter is too large.
 */
export const scattersLittle: ProcedureCheck = {
  code: "check.scatters-little",
  detect(situation) {
    const load = repeatedIn(situation).find(
      ({ found, assumed }) => !assumed && found.tooLittle.verdict !== "agree",
    );
    if (load === undefined) return undefined;
    const { role, offers, found, statedGrams } = load;
    return {
      severity: "warn",
      params: { role, count: found.count, found_g: found.s, stated_g: statedGrams, p: found.tooLittle.p },
      remedies: [
        { code: "check.remedy.repeat-undisturbed", offer: { do: "repeat", role: offers } },
        { code: "check.remedy.state-the-scatter" },
      ],
    };
  },
};
