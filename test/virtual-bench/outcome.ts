import type { Row } from "./class-of.ts";
import { type Case, casesOf } from "./scenario.ts";
import type { Answer, Underhook } from "./underhook.ts";

/** What came of one virtual measurement. */
export interface Outcome {
  covered: boolean;
  /** where the truth lies when it is not covered */
  side: "below" | "above" | null;
  warned: boolean;
  stopped: boolean;
  /** relative expanded uncertainty */
  relativeU: number | null;
  fromTrials: boolean;
  genuine: boolean;
  state: string;
  asked: Case;
  answer: Answer;
}

/** Notes about how the interval was found, or about the method as such: they say nothing of this weighing. */
const noWarning: ReadonlySet<string> = new Set([
  "measurement.not-gum",
  "measurement.not-settled",
  "measurement.second-order",
  "measurement.pool",
  "measurement.tap-water",
  "measurement.no-scatter-shown",
  "measurement.no-liquid-temperature",
  "measurement.flask-filling",
  "measurement.liquid-stated-at",
  "check.repeats-exhausted",
]);

function outcomeOf(row: Row, asked: Case, answer: Answer): Outcome {
  const { truth, customer } = asked;
  const interval = answer.error ? null : answer.interval_g_cm3;
  const checks = answer.error ? [] : answer.checks;
  const side =
    interval === null ? null : truth < interval[0] ? "below" : truth > interval[1] ? "above" : null;
  const told = row.told;
  return {
    covered: interval !== null && side === null,
    side,
    warned: checks.some(
      (check) => check.severity === "warn" && (told?.(check) || !noWarning.has(check.code)),
    ),
    stopped: interval === null || checks.some(({ severity }) => severity === "stop"),
    relativeU: interval === null ? null : answer.expanded_g_cm3! / answer.density_g_cm3!,
    fromTrials: answer.interval_from === "monte-carlo",
    genuine: customer.genuine,
    state: answer.error ? "error" : answer.conformity.state,
    asked,
    answer,
  };
}

/** Weighs a class `count` times and sends it through the command line. */
export async function outcomesOf(underhook: Underhook, row: Row, count: number): Promise<Outcome[]> {
  const cases = casesOf(row.scenario, row.seed, count);
  const answers = await underhook.compute(cases.map(({ request }) => request));
  return cases.map((one, n) => outcomeOf(row, one, answers[n]!));
}

/** The figures of one class. Shares of all its weighings. */
export interface Figures {
  count: number;
  /** of those not stopped, the share whose interval holds the truth */
  covered: number;
  below: number;
  above: number;
  warned: number;
  stopped: number;
  /** covered, warned or stopped */
  safe: number;
  /** of the genuine pieces, share called excluded */
  genuineExcluded: number;
  fakesConsistent: number;
  fakesExcluded: number;
  fromTrials: number;
  /** median of U/ρ */
  relativeU: number;
}

export function figuresOf(outcomes: readonly Outcome[]): Figures {
  const share = (of: readonly Outcome[], which: (one: Outcome) => boolean) =>
    of.length === 0 ? Number.NaN : of.filter(which).length / of.length;
  const spoken = outcomes.filter(({ stopped }) => !stopped);
  const genuine = outcomes.filter((one) => one.genuine);
  const fakes = outcomes.filter((one) => !one.genuine);
  const relative = spoken.flatMap(({ relativeU }) => relativeU ?? []).sort((a, b) => a - b);
  return {
    count: outcomes.length,
    covered: share(spoken, ({ covered }) => covered),
    below: share(spoken, ({ side }) => side === "below"),
    above: share(spoken, ({ side }) => side === "above"),
    // a fake is warned of rightly
    warned: share(genuine, ({ warned, stopped }) => warned && !stopped),
    stopped: share(outcomes, ({ stopped }) => stopped),
    safe: share(outcomes, ({ covered, warned, stopped }) => covered || warned || stopped),
    genuineExcluded: share(genuine, ({ state }) => state === "excluded"),
    fakesConsistent: share(fakes, ({ state }) => state === "consistent"),
    fakesExcluded: share(fakes, ({ state }) => state === "excluded"),
    fromTrials: share(spoken, ({ fromTrials }) => fromTrials),
    relativeU: relative[relative.length >> 1] ?? Number.NaN,
  };
}
