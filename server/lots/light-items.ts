import { message } from "../../calibration/message.ts";
import { claimedPermille } from "./light-for-claim.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";

/** Pieces as light as gold of their claim gets, by claim. */
export function lightForTheirClaim(items: readonly LotItem[]): LotCheck[] {
  const light = items.filter((item) => item.light);
  const finenesses = [...new Set(light.map(({ claim }) => claimedPermille(claim)!))].sort((a, b) => a - b);
  return finenesses.map((permille) => ({
    flag: "light for its claim",
    message: message("lot-check.light-for-claim", { permille }),
    remedy: message("lot-check.light-for-claim-remedy"),
    tickets: light.filter(({ claim }) => claimedPermille(claim) === permille).map(({ ticket }) => ticket),
  }));
}
