import { Refusal } from "../weighing/refusal.ts";
import type { Scale } from "./scale.ts";

/** Throws Refusal while a question about the balance is open: a reading on a zero that nobody checked is none. */
export function mustBeLookedAt(scale: Scale): void {
  const doubts = scale.doubts();
  // whether it is the same balance at all comes before its zero
  const doubt = doubts.find(({ kind }) => kind === "another-balance") ?? doubts[0];
  if (doubt)
    throw new Refusal(
      `Nothing is taken before somebody has looked at the balance and answered here. ${doubt.says}`,
    );
}
