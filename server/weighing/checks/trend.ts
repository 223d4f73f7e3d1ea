import { climb } from "./climb.ts";
import type { Found, ProcedureCheck } from "./procedure-check.ts";
import { aloneStandsOut, type Repeated, repeatedIn, severityOf } from "./repeated-readings.ts";
import { grams, type Situation } from "./situation.ts";

/** So many readings, each beyond the one before on the same side, come by chance in 2/n!: 0.04 % for 7. */
const enough = 7;

/**
 * Readings of one load that should rest run one way: the slope of three or more against the stated scatter (agreement.ts),
 * or seven without a single step back, however small the steps. `seen_g_per_reading` tells how fast a run must be to be
 * told in 95 of 100 cases.
 */
export const trend: ProcedureCheck = {
  code: "check.trend",
  detect(situation) {
    for (const load of repeatedIn(situation)) {
      const found = running(load, situation);
      if (found !== undefined) return found;
    }
    return undefined;
  },
};

function running(load: Repeated, situation: Situation): Found | undefined {
  const { role, offers, readings, found } = load;
  const values = readings.map(grams);
  const steps = values.slice(1).map((value, place) => value - values[place]!);
  const oneWay = steps.every((step) => step > 0) || steps.every((step) => step < 0);
  const long = oneWay && values.length >= enough;
  const { verdict, gramsPerReading, seenGrams } = found.trend;
  if (verdict === "agree" && !long) return undefined;
  // a single reading that stands out is told as that
  if (found.scatter.verdict !== "agree" && aloneStandsOut(load)) return undefined;
  // immersions that run because of bubbles are told as that
  if (!long && offers === "wet" && role !== "full" && climb(situation).runs !== "neither") return undefined;
  return {
    severity: long ? "stop" : severityOf(verdict === "contradict" ? "contradict" : "differ"),
    params: {
      role,
      count: values.length,
      first_g: values[0]!,
      last_g: values.at(-1)!,
      g_per_reading: gramsPerReading,
      seen_g_per_reading: seenGrams,
    },
    remedies: [
      { code: "check.remedy.wait-for-rest" },
      { code: "check.remedy.repeat-undisturbed", offer: { do: "repeat", role: offers } },
    ],
  };
}
