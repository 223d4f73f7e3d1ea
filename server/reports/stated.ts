import type { Reason } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Entry, EntryOf } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import {
  isMeasured,
  type RecordedNoReading,
  type RecordedStatement,
  statementAfter,
} from "../weighing/recorded-statement.ts";

export type Item = Partial<BodyOf<"piece-opened">>;
export type Result = BodyOf<"result">;

/** What the entries about one piece state now: the latest result, the piece as amended, the readings behind it. */
export interface Stated<Statement = RecordedStatement> {
  piece: Item;
  opened: Entry | undefined;
  result: Result;
  /** what the result says of the measurement, whatever version wrote it */
  statement: Statement;
  /** the entry that states the result: a result or an amendment */
  entry: EntryOf<"result"> | EntryOf<"amendment">;
  captures: { entry: EntryOf<"capture">; voided: Reason | null }[];
  /** other tests that were not set aside */
  evidence: EntryOf<"evidence">[];
  /** photos that were not set aside */
  photos: EntryOf<"photo">[];
  /** what second persons read of typed readings, oldest first */
  secondReadings: EntryOf<"second-reading">[];
  amendments: EntryOf<"amendment">[];
  issued: EntryOf<"report-issued">[];
  voided: EntryOf<"voiding"> | undefined;
}

/** What a record states, also one whose readings are those of no density. */
export type Standing = Stated<RecordedStatement | RecordedNoReading>;

/** The record of a measurement. Throws Refusal while there is none, and where the readings are those of no density. */
export function statedBy(entries: readonly Entry[]): Stated {
  return measured(standingBy(entries));
}

/** The same record, as one of a measurement. Throws Refusal where its readings are those of no density. */
export function measured(standing: Standing): Stated {
  const { statement } = standing;
  if (!isMeasured(statement)) throw new Refusal("record.no-density");
  return { ...standing, statement };
}

/** Folds the entries about one piece, oldest first. Throws Refusal while there is no result. */
export function standingBy(entries: readonly Entry[]): Standing {
  const states = entries.findLast(isStatement);
  const result = states?.kind === "result" ? states.body : states?.body.result;
  if (!states || !result) throw new Refusal("report.refused.no-result");
  const amendments = entries.filter((entry) => entry.kind === "amendment");
  const voidings = new Map(
    entries.filter((entry) => entry.kind === "voiding").map((entry) => [entry.body.entry, entry] as const),
  );
  const opened = entries.findLast((entry) => entry.kind === "piece-opened");
  return {
    piece: Object.assign({}, opened?.body, ...amendments.map((entry) => entry.body.piece ?? {})),
    opened,
    result,
    statement: statementAfter(states.id, result, entries),
    entry: states,
    captures: entries
      .filter((entry) => entry.kind === "capture")
      .map((entry) => ({ entry, voided: voidings.get(entry.id)?.body.reason ?? null })),
    evidence: entries.filter((entry) => entry.kind === "evidence").filter(({ id }) => !voidings.has(id)),
    photos: entries.filter((entry) => entry.kind === "photo").filter(({ id }) => !voidings.has(id)),
    secondReadings: entries.filter((entry) => entry.kind === "second-reading"),
    amendments,
    issued: entries.filter((entry) => entry.kind === "report-issued"),
    voided: entries.find(isVoidingOf(entries)),
  };
}

/** A record that was declared void stays so: no amendment brings it back. */
function isVoidingOf(entries: readonly Entry[]) {
  const stated = new Set(entries.filter(isStatement).map(({ id }) => id));
  return (entry: Entry): entry is EntryOf<"voiding"> =>
    entry.kind === "voiding" && stated.has(entry.body.entry);
}

/** An amendment of the piece alone states no result; the result it belongs to does. */
function isStatement(entry: Entry): entry is EntryOf<"result"> | EntryOf<"amendment"> {
  return entry.kind === "result" || (entry.kind === "amendment" && entry.body.result !== undefined);
}
