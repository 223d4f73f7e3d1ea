import type { DecisionRule } from "./decision-rule.ts";

/** A rule in one sentence, without the numbers of a measurement. */
export function ruleSays({ kind, multiple }: DecisionRule): string {
  switch (kind) {
    case "simple":
      return "Simple acceptance (JCGM 106, ILAC-G8): accepted when the value lies inside the limits, without a guard band.";
    case "guard-band":
      return `Guard band of ${multiple} U (JCGM 106, ILAC-G8): accepted only when the value lies inside the limits by that much.`;
    case "pass-and-conditional":
      return `Pass and conditional (ILAC-G8), with a guard band of ${multiple} U on both sides of each limit: pass, conditional pass, conditional fail or fail.`;
  }
}

/** The risk a rule carries at its worst accepted value, as a share. */
export function riskSays(worstAcceptanceRisk: number, acceptance: readonly [number, number] | null): string {
  return acceptance === null
    ? "Risk of the rule: none of acceptance, since it can accept nothing here."
    : `Risk of the rule: a piece it accepts can be outside the limits with a probability of up to ${percentOf(worstAcceptanceRisk)} %, at the worst accepted value.`;
}

/** A small probability in percent, two figures. */
function percentOf(share: number): string {
  return `${+(share * 100).toPrecision(2)}`;
}
