import { message } from "../../calibration/message.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";

/** Pieces where a magnet or another test speaks against what the density says. */
export function testsAgainst(items: readonly LotItem[]): LotCheck[] {
  const tickets = items.flatMap((item) => (item.testsAgainst ? [item.ticket] : []));
  if (tickets.length === 0) return [];
  return [
    {
      flag: "tests against it",
      message: message("lot-check.tests-against"),
      remedy: message("lot-check.tests-against-remedy"),
      tickets,
    },
  ];
}
