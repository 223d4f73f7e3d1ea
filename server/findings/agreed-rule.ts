import type { DecisionRule } from "./decision-rule.ts";

/** A decision rule with the moment it was agreed; the risk it carries must be accepted before a value is known. */
export interface AgreedRule {
  rule: DecisionRule;
  /** milliseconds since 1970 */
  agreedAtMs: number;
  agreedBy: string;
}

/**
 * The rule, if it was agreed before the measurement began (ISO/IEC 17025:2017 7.1.3, ILAC-G8:09/2019).
 * Throws RangeError when it was agreed later: a rule chosen after the value is known decides nothing.
 */
export function ruleFor(agreed: AgreedRule, measurementBeganAtMs: number): DecisionRule {
  if (agreed.agreedAtMs > measurementBeganAtMs)
    throw new RangeError(
      `The decision rule was agreed at ${new Date(agreed.agreedAtMs).toISOString()}, after the measurement began at ${new Date(measurementBeganAtMs).toISOString()}. Right: agree the rule first, then measure; weigh again, or report without a verdict.`,
    );
  return agreed.rule;
}
