import type { MassUnit } from "../calibration/units.ts";

/** What the line itself says about rest: by its own mark, or nothing at all. */
export type Steadiness = "steady" | "moving" | "not-told";

/** A number a balance sent, decimals kept as text. */
export interface Reading {
  /** as sent, decimal point, sign only when negative: "31.1035" */
  text: string;
  unit: MassUnit;
  /** the same in g, exact decimal text */
  grams: string;
  steady: Steadiness;
  /** what the line calls the weight, when it does */
  label?: "net" | "gross";
}

/** Something a balance line says that is not a weight. Never a number. */
export interface BalanceEvent {
  kind:
    | "unknown-line"
    | "overload"
    | "underload"
    | "not-a-weight"
    | "unit-missing"
    | "unclear"
    | "damaged"
    | "housekeeping"
    | "clock-jumped"
    | "trouble"
    | "silent"
    | "lost"
    | "back"
    | "open"
    | "refused";
  /** a whole sentence for a person: what, with which value, what would be right, what to do */
  says: string;
}

/** One line as it came, with what it was understood to mean. The bytes and times are the original observation. */
export type LineRecord = {
  /** arrival, ISO 8601 with milliseconds, UTC */
  at: string;
  /** arrival on a clock that never jumps, ms */
  monotonicMs: number;
  /** the line as received, control characters escaped as \r \n \x02 */
  raw: string;
} & ({ reading: Reading; event?: never } | { event: BalanceEvent; reading?: never });

/** What one line means: a reading, an event, or null when this shape does not know the line. */
export type LineMeaning = { reading: Reading } | { event: BalanceEvent } | null;

/** Turns the text of one line into its meaning; one per connection, since some shapes remember earlier lines. */
export type LineReader = (line: string) => LineMeaning;

/** The same for readers that also look at the bytes as received, parity bits and line end included. */
export type BytesReader = (line: string, bytes: Uint8Array) => LineMeaning;

const endings: ReadonlySet<BalanceEvent["kind"]> = new Set([
  "lost",
  "refused",
  "silent",
  "overload",
  "underload",
  "not-a-weight",
  "unit-missing",
  "unclear",
  "trouble",
]);

/** Events after which earlier readings no longer count: what is on the pan now is not what they said. */
export function endsTheReading(record: LineRecord): boolean {
  return record.event !== undefined && endings.has(record.event.kind);
}
