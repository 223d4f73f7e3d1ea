import type { BalanceProfile } from "./balance-profile.ts";
import { scatterPerReadability } from "./check.ts";

/** Whether a profile may be used at a given time, in words. */
export function profileStanding(
  profile: BalanceProfile,
  at: string,
): { state: "valid" | "incomplete" | "expired" | "failed"; says: string } {
  const { failed, missing, validUntil, balance } = profile;
  if (failed.length > 0) return { state: "failed", says: `${balance}: ${failed.join(" ")}` };
  if (at > validUntil)
    return {
      state: "expired",
      says: `The checks of ${balance} ran out on ${validUntil.slice(0, 10)}. Repeat them; until then results say so.`,
    };
  if (missing.length > 0)
    return {
      state: "incomplete",
      says: `${balance} was never checked for ${missing.join(", ")}; careful values are assumed.`,
    };
  return { state: "valid", says: `${balance} is checked until ${validUntil.slice(0, 10)}.` };
}

/** Smallest displaced mass, g, for a wanted relative uncertainty (k = 2) when the scatter of one reading rules: 2 s/D. */
export function smallestDisplacedGrams(profile: BalanceProfile, relative: number): number {
  const floor = scatterPerReadability * profile.readabilityGrams;
  return (2 * Math.max(profile.immersedRepeatability.value, floor)) / relative;
}
