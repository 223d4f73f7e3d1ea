import type { Library } from "../metals/library.ts";
import type { DecisionRule } from "./decision-rule.ts";

/** What is known of the measurement beyond its density; each makes the finding's words more concrete. */
export interface FindingContext {
  /** temperature of the liquid, °C: bands are brought to it. 20 when absent. */
  celsius?: number;
  massG?: number;
  readabilityG?: number;
  pieces?: number;
  /** rule agreed before measuring, for the verdict on the claim's band */
  rule?: DecisionRule;
  /** with own metals; the built-in library when absent */
  library?: Library;
}
