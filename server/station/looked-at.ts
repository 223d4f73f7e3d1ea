import { Refusal } from "../../calibration/refusal.ts";
import type { Scale } from "./scale.ts";

/** Throws Refusal while a question about the balance is open: a reading on a zero that nobody checked is none. */
export function mustBeLookedAt(scale: Scale): void {
  const checks = scale.checks();
  // whether it is the same balance at all comes before its zero
  const check = checks.find(({ kind }) => kind === "another-balance") ?? checks[0];
  if (check) throw new Refusal("balance.check.first", { check: check.message });
}
