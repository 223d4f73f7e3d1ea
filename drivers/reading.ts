import type { Code, Message, Params } from "../calibration/message.ts";
import type { MassUnit } from "../calibration/units.ts";

/** What the line itself says about rest, by its own mark; unknown where it says nothing. */
export type Stability = "stable" | "moving" | "unknown";

/** A number a balance sent, decimals kept as text. */
export interface Reading {
  /** as sent, decimal point, sign only when negative: "31.1035" */
  text: string;
  unit: MassUnit;
  /** the same in g, exact decimal text */
  grams: string;
  stability: Stability;
  /** what the line calls the weight, when it does */
  label?: "net" | "gross";
}

/** Codes of events: "line.<kind>", or "line.<kind>.<which>" where one kind is told in several ways. */
export type EventCode = Extract<Code, `line.${string}`>;

type KindOf<C> = C extends `line.${infer Kind}.${string}`
  ? Kind
  : C extends `line.${infer Kind}`
    ? Kind
    : never;

export type EventKind = KindOf<EventCode>;

/** Something a line or its cable says that is not a weight, as a message for a person. Never a number. */
export interface BalanceEvent extends Message {
  readonly kind: EventKind;
  readonly code: EventCode;
  readonly params: Params;
}

/** True for the code of an event. */
export function isEventCode(code: Code): code is EventCode {
  return code.startsWith("line.");
}

/** What a line means that is no weight. */
export function lineEvent(code: EventCode, params: Params = {}): { event: BalanceEvent } {
  const [, kind] = code.split(".");
  // the second part of each event code is its kind, by the type
  return { event: { kind: kind as EventKind, code, params } };
}

/**
 * One line as it came, with what it was understood to mean. The bytes and times are the original observation. R is what
 * the device measures: a weight, or the quantity of a sensor.
 */
export type LineRecord<R = Reading> = {
  /** arrival, ISO 8601 with milliseconds, UTC */
  at: string;
  /** arrival on a clock that never jumps, ms */
  monotonicMs: number;
  /** the line as received, control characters escaped as \r \n \x02 */
  raw: string;
} & ({ reading: R; event?: never } | { event: BalanceEvent; reading?: never });

/** What one line means: a reading, an event, or null when this shape does not know the line. */
export type LineMeaning<R = Reading> = { reading: R } | { event: BalanceEvent } | null;

/** Turns the text of one line into its meaning; one per connection, since some shapes remember earlier lines. */
export type LineReader<R = Reading> = (line: string) => LineMeaning<R>;

/** The same for readers that also look at the bytes as received, parity bits and line end included. */
export type BytesReader<R = Reading> = (line: string, bytes: Uint8Array) => LineMeaning<R>;

const endings: ReadonlySet<EventKind> = new Set([
  "lost",
  "refused",
  "silent",
  "overload",
  "underload",
  "not-a-weight",
  "unit-missing",
  "unclear",
  "unknown-line",
  "error",
  "notice",
]);

/** Events after which earlier readings no longer count: what is on the pan now is not what they said. */
export function endsTheReading(record: LineRecord): boolean {
  return record.event !== undefined && endings.has(record.event.kind);
}

const other: ReadonlySet<EventKind> = new Set(["lost", "overload", "underload"]);

/** Events after which the load itself may be another one. */
export function endsTheLoad(record: LineRecord): boolean {
  return record.event !== undefined && other.has(record.event.kind);
}
