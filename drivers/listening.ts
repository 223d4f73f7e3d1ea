import type { Message } from "../calibration/message.ts";
import type { Clock } from "./clock.ts";
import { escapeBytes, unescapeText } from "./escape.ts";
import {
  createLineCutter,
  type LineCutter,
  type LineCutterOptions,
  lineText,
  longestLine,
  usualIdleMs,
} from "./line.ts";
import type { LineRecords } from "./line-records.ts";
import { type BytesReader, type LineMeaning, lineEvent, type Reading } from "./reading.ts";
import { unknownLine } from "./shapes/index.ts";
import { createWidthGuard } from "./width-guard.ts";

/** How long a balance that sends by itself may be silent before that is told, ms. */
export const defaultPatienceMs = 2000;

export interface ListeningOptions<R> {
  clock: Clock;
  records: LineRecords<R>;
  /** a fresh reader for every opening, so that nothing is remembered across a lost cable */
  read: () => BytesReader<R>;
  /** cuts the stream into lines; at any line end by default */
  cutter?: ((options: LineCutterOptions) => LineCutter) | undefined;
  patienceMs: number;
  /** the name of the balance, for the event of its silence */
  balance: Message | string;
  /** the request it is sent, for the event when nothing comes back */
  asked?: string | undefined;
}

/** The way from bytes to line records, and the watch over silence; the same for every kind of cable. */
export interface Listening<R = Reading> {
  /** when the first byte came, by the monotonic clock; undefined before there was one */
  readonly firstByteMs: number | undefined;
  /** the line is open: forget earlier bytes, start to expect lines */
  opened(): void;
  bytes(chunk: Uint8Array): void;
  /** a whole report that was no line */
  report(bytes: Uint8Array, meaning: NonNullable<LineMeaning<R>>): void;
  /** the line is closed: nothing is expected */
  closed(): void;
}

export function createListening<R = Reading>(options: ListeningOptions<R>): Listening<R> {
  const { clock, records, read, patienceMs, asked, cutter: cutterFor = createLineCutter } = options;
  let reader = read();
  let callOffIdle = () => {};
  let callOffSilence = () => {};
  let heardMs = 0;
  let firstByteMs: number | undefined;
  const width = createWidthGuard(clock);
  const isEcho = echoOf(asked);

  const cutter = cutterFor({
    onLine: ({ bytes, text }) => records.line(escapeBytes(bytes), meaningOf(text, bytes)),
    onTooLong: (bytes) =>
      records.line(escapeBytes(bytes), lineEvent("line.unknown-line.too-long", { characters: longestLine })),
  });

  function meaningOf(text: string, bytes: Uint8Array): NonNullable<LineMeaning<R>> {
    if (asked !== undefined && isEcho(text)) return lineEvent("line.housekeeping.echo", { request: asked });
    const meaning = reader(text, bytes) ?? unknownLine(text);
    if (!("reading" in meaning) || width.fits(text.length)) return meaning;
    return lineEvent("line.damaged.length", { line: text });
  }

  function expectLines(): void {
    callOffSilence();
    heardMs = clock.monotonicMs();
    if (Number.isFinite(patienceMs)) callOffSilence = clock.after(patienceMs, silent);
  }

  const silent = () => records.event(silentFor(Math.round((clock.monotonicMs() - heardMs) / 1000), options));

  return {
    get firstByteMs() {
      return firstByteMs;
    },
    opened() {
      cutter.reset();
      reader = read();
      width.reset();
      expectLines();
    },
    bytes(chunk) {
      firstByteMs ??= clock.monotonicMs();
      callOffIdle();
      expectLines();
      cutter.push(chunk);
      if (cutter.waiting) callOffIdle = clock.after(cutter.idleMs ?? usualIdleMs, () => cutter.idle());
    },
    report(bytes, meaning) {
      firstByteMs ??= clock.monotonicMs();
      expectLines();
      records.line(escapeBytes(bytes), meaning);
    },
    closed() {
      callOffIdle();
      callOffSilence();
      cutter.reset();
    },
  };
}

/** Tells whether a line is the request itself, sent back by the other end. */
function echoOf(asked: string | undefined): (text: string) => boolean {
  const echo = asked === undefined ? undefined : lineText(unescapeText(asked)).trim();
  return (text) => text.trim() === echo;
}

function silentFor(
  seconds: number,
  { balance, asked }: Pick<ListeningOptions<unknown>, "balance" | "asked">,
) {
  return asked === undefined
    ? lineEvent("line.silent", { balance, seconds })
    : lineEvent("line.silent.asked", { balance, request: asked, seconds });
}
