import { message } from "../../calibration/message.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";

/** Pieces that are denser than anything their claim allows: finer than claimed, or with something dense inside. */
export function heavyForTheirClaim(items: readonly LotItem[]): LotCheck[] {
  const heavy = items.filter((item) => item.heavy);
  if (heavy.length === 0) return [];
  return [
    {
      flag: "heavy for its claim",
      message: message("lot-check.heavy-for-claim"),
      remedy: message("lot-check.heavy-for-claim-remedy"),
      tickets: heavy.map(({ ticket }) => ticket),
    },
  ];
}
