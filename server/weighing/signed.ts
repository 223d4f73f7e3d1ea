import { Refusal } from "../../calibration/refusal.ts";

/** A reason and who gives it, without blanks around them. Throws Refusal when one is missing. */
export function signed({ reason, by }: { reason: string; by: string }): { reason: string; by: string } {
  if (by.trim() === "") throw new Refusal("record.by-missing", {}, "by");
  if (reason.trim() === "") throw new Refusal("record.reason-missing", {}, "reason");
  return { reason: reason.trim(), by: by.trim() };
}
