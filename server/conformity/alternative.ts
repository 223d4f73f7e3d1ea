import { type Message, message } from "../../calibration/message.ts";
import type { Metal } from "../metals/metal.ts";
import { principal, shareOf } from "../metals/share-of.ts";
import type { WorthTable } from "../metals/worth-table.ts";
import type { Candidate } from "./candidate.ts";
import { worthPassingOff } from "./worth.ts";

/**
 * Two bands closer than this share of the density are not told apart by any density: handbooks disagree about fine gold
 * alone by 0.2 % (19.28 to 19.33 g/cm³).
 */
const closestGap = 0.002;

/**
 * Why a density leaves something beside the claim. "band": its band meets that of the claim, no density separates them;
 * "uncertainty": a finer density would; "freedom": its maker chooses the shares, so it can be given any density.
 */
export type Cause = "band" | "uncertainty" | "freedom";

/** Why a candidate is left beside the claim; without a claim its band alone says it. */
export function causeOf({ metal, tuned }: Candidate, claimed: Metal | undefined): Cause {
  if (tuned) return "freedom";
  if (!claimed) return "band";
  return gapBetween(metal, claimed) <= closestGap * claimed.densityGPerCm3.nominal ? "band" : "uncertainty";
}

/** The same for a person, with the band and its distance from that of the claim. */
export function whyLeft(candidate: Candidate, claimed: Metal | undefined): Message {
  const { metal } = candidate;
  const { low: low_g_cm3, high: high_g_cm3 } = metal.densityGPerCm3;
  if (!claimed && !candidate.tuned) return message("alternative.why.no-claim", { low_g_cm3, high_g_cm3 });
  switch (causeOf(candidate, claimed)) {
    case "freedom":
      return candidate.kind === "mixed"
        ? message("alternative.why.freedom-shares")
        : message("alternative.why.freedom-skin");
    case "band":
      return message("alternative.why.band", { low_g_cm3, high_g_cm3 });
    case "uncertainty":
      return message("alternative.why.uncertainty", {
        low_g_cm3,
        high_g_cm3,
        gap_g_cm3: claimed ? gapBetween(metal, claimed) : 0,
      });
  }
}

/** True for an alternative that matters and that a finer density would exclude: it makes a result inconclusive. */
export function needsFiner(candidate: Candidate, claimed: Metal, worth: WorthTable): boolean {
  const { metal, occurrence } = candidate;
  return (
    (occurrence === "common" || occurrence === "occasional") &&
    causeOf(candidate, claimed) === "uncertainty" &&
    worthPassingOff(metal, claimed, worth)
  );
}

/** True when a piece of `m` is what the claim promises: the claim itself, one of its recipes, or the same fine metal. */
export function satisfies(m: Metal, claimed: Metal): boolean {
  if (m.id === claimed.id || claimed.recipes?.includes(m.id) || m.recipes?.includes(claimed.id)) return true;
  const main = principal(claimed);
  const floor = shareOf(claimed, main)[0];
  if (floor < 0.99) return false;
  return m.family !== "cored-and-plated" && principal(m) === main && shareOf(m, main)[0] >= floor;
}

function gapBetween(a: Metal, b: Metal): number {
  const [x, y] = [a.densityGPerCm3, b.densityGPerCm3];
  return Math.max(x.low - y.high, y.low - x.high, 0);
}
