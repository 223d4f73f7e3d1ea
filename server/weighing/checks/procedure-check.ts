import type { Check, CheckCode } from "./check.ts";
import type { Situation } from "./situation.ts";

/** What a check finds, before it is named. */
export type Found = Omit<Check, "code">;

/** One thing that can be recognised. `look` is a pure function and says nothing while it knows too little. */
export interface ProcedureCheck {
  readonly code: CheckCode;
  detect(situation: Situation): Found | undefined;
}
