import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Evaluated } from "../compute/evaluation.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Happened } from "../ledger/ledger.ts";
import { type Check, checkCodes, impossible } from "./checks/check.ts";
import type { Item, Recorded } from "./item.ts";
import type { Known } from "./known.ts";
import { noNumbers } from "./no-numbers.ts";
import { signed } from "./signed.ts";

type Stop = Item["stops"][number];

/** The checks that stop the record of a weighing, without those answered since its readings changed. */
export function stopping({ answers }: Item, checks: readonly Check[]): Stop[] {
  const settled = new Set(answers.flatMap(({ body }) => body.checks.map(({ code }) => code)));
  return checks.flatMap(({ code, severity, params }) =>
    severity === "stop" && (impossible.has(code) || !settled.has(code)) ? [{ code, params }] : [],
  );
}

/**
 * A result that says nothing of its claim because these checks stop it, and no density where they say that the readings
 * are those of none; itself where none stops it.
 */
export function stoppedBy(result: BodyOf<"result">, stops: readonly Stop[]): BodyOf<"result"> {
  if (stops.length === 0) return result;
  const { statement } = result;
  return {
    ...result,
    ...(statement && { statement: withoutVerdict(statement, stops) }),
    stops: [...stops],
  };
}

/** The evaluation of a weighing that these checks stop: its numbers without any verdict; itself where none does. */
export function evaluationStoppedBy(evaluation: Evaluated, stops: readonly Stop[]): Evaluated {
  if (stops.length === 0) return evaluation;
  const { statement } = evaluation;
  return {
    ...evaluation,
    statement: { ...statement, excluded_by_tests: [], ...noVerdict(statement.conformity, stops) },
  };
}

function withoutVerdict(
  statement: NonNullable<BodyOf<"result">["statement"]>,
  stops: readonly Stop[],
): BodyOf<"result">["statement"] {
  const stopped = { ...statement, ...noVerdict(statement.conformity, stops) };
  return stops.some(isImpossible) ? { ...stopped, ...noNumbers } : stopped;
}

function noVerdict({ claim }: { claim: string | null }, stops: readonly Stop[]) {
  return {
    conformity: { claim, state: "no-valid-reading" as const },
    not_excluded: [],
    fineness: null,
    cautions: [],
    next_tests: [],
    answer: { ...message("answer.no-valid-reading", { seen: [...stops] as Message[] }) },
  };
}

/** True for a check that no answer settles: of a procedure, or of a measurement that gives no density. */
export function isImpossible({ code }: Stop): boolean {
  return impossible.has(code) || code.startsWith("measurement.");
}

/** Throws Refusal when one of the checks says that the readings cannot be. */
export function mustBePossible(stops: readonly Stop[]): void {
  const impossible = stops.filter(isImpossible);
  if (impossible.length > 0) throw new Refusal("weighing.check.impossible", { message: impossible });
}

/** The question that a check asks; a check of a later version asks as it is told. */
export function askOf(stop: Stop): Stop {
  const known = checkCodes.find((one) => one === stop.code);
  return known === undefined ? stop : { ...stop, code: `${known}.ask` };
}

/** What a person says of the checks that stop a record. */
export interface Said {
  found?: string;
  /** the readings are right as they stand: what was found explains the check, and no reading is wrong */
  stands?: boolean;
  by?: string;
}

/**
 * What was found, as the answer to these checks. Throws Refusal without an answer, where the readings are not said to
 * stand, or where no answer settles one.
 */
export function answered(
  stops: readonly Stop[],
  { found = "", stands = false, by = "" }: Said,
): Extract<Happened, { kind: "check-answered" }> {
  mustBePossible(stops);
  if (found.trim() === "")
    throw new Refusal("weighing.check.unanswered", { asks: stops.map(askOf) }, "found");
  if (!stands) throw new Refusal("weighing.check.unconfirmed", { asks: stops.map(askOf) }, "stands");
  const body = { checks: [...stops], found: found.trim(), ...(by.trim() === "" ? {} : { by: by.trim() }) };
  return { kind: "check-answered", body };
}

/** A stopped record is answered: what was found is kept, and the same readings are stated anew. Throws Refusal. */
export function answeredRecord(
  item: Recorded,
  said: { found: string; stands: boolean; by: string },
  { result }: Known,
): Happened[] {
  if (item.stops.length === 0) throw new Refusal("weighing.check.nothing-asked");
  const answer = answered(item.stops, said);
  if (result === undefined || "refused" in result)
    throw new Refusal("record.not-amended", { why: result?.refused ?? "" });
  const body = { replaces: item.closed.entry, ...signed({ reason: said.found, by: said.by }), result };
  return [answer, { kind: "amendment", body }];
}
