import type { RecordedStatement } from "./recorded-statement.ts";

/** Checks of a statement that say that its tests, or a test and its density, cannot both be right. */
const contradictions: ReadonlySet<string> = new Set([
  "test.check.contradict",
  "test.check.fits-nothing",
  "test.check.outline-too-large",
  "test.check.outline-too-small",
  "test.check.pull-without-steel",
]);

/** True where a magnet or another test speaks against what the density says. */
export function isContradicted({ checks }: Pick<RecordedStatement, "checks">): boolean {
  return checks.some((one) => typeof one !== "string" && contradictions.has(one.code));
}
