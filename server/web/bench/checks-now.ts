import type { Bench } from "../../station/bench.ts";

/** True while the balance in use watches the load of the last reading for a creep, and the page says so. */
export const isWatching = ({ live }: Pick<Bench, "live">): boolean =>
  live?.state === "reading" && live.watchesForSeconds !== undefined;

/** The checks that the page shows now: what a load may still creep is one only once it was lifted before it was known. */
export const checksNow = (bench: Pick<Bench, "checks" | "live">): Bench["checks"] =>
  isWatching(bench) ? bench.checks.filter(({ code }) => code !== "check.creep-possible") : bench.checks;
