import { message } from "../../calibration/message.ts";
import type { RecordedStatement } from "../weighing/recorded-statement.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";

/** Checks of a statement that say that its tests, or a test and its density, cannot both be right. */
const contradictions: ReadonlySet<string> = new Set([
  "test.check.contradict",
  "test.check.fits-nothing",
  "test.check.outline-too-large",
  "test.check.outline-too-small",
  "test.check.pull-without-steel",
]);

/** True where a magnet or another test speaks against what the density says. */
export function areTestsAgainst({ checks }: Pick<RecordedStatement, "checks">): boolean {
  return checks.some((one) => typeof one !== "string" && contradictions.has(one.code));
}

/** The pieces of a lot of which that is so. */
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
