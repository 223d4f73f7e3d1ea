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
import type { BytesReader, LineMeaning } from "./reading.ts";
import { unknownLine } from "./shapes/index.ts";
import type { Told } from "./told.ts";
import { createWidthGuard } from "./width-guard.ts";

/** How long a balance that sends by itself may be silent before that is told, ms. */
export const defaultPatienceMs = 2000;

export interface ListeningOptions {
  clock: Clock;
  told: Told;
  /** a fresh reader for every opening, so that nothing is remembered across a lost cable */
  read: () => BytesReader;
  /** cuts the stream into lines; at any line end by default */
  cutter?: ((options: LineCutterOptions) => LineCutter) | undefined;
  patienceMs: number;
  /** for people: which balance falls silent */
  name: string;
  /** the request it is sent, for the words when nothing comes back */
  asked?: string | undefined;
}

/** The way from bytes to told lines, and the watch over silence; the same for every kind of cable. */
export interface Listening {
  /** the line is open: forget earlier bytes, start to expect lines */
  opened(): void;
  bytes(chunk: Uint8Array): void;
  /** a whole report that was no line */
  report(bytes: Uint8Array, meaning: NonNullable<LineMeaning>): void;
  /** the line is closed: nothing is expected */
  closed(): void;
}

export function createListening(options: ListeningOptions): Listening {
  const { clock, told, read, patienceMs, name, asked, cutter: cutterFor = createLineCutter } = options;
  let reader = read();
  let callOffIdle = () => {};
  let callOffSilence = () => {};
  let heardMs = 0;
  const echo = asked === undefined ? "" : lineText(unescapeText(asked)).trim();
  const width = createWidthGuard(clock);

  const cutter = cutterFor({
    onLine: ({ bytes, text }) => told.line(escapeBytes(bytes), meaningOf(text, bytes)),
    onTooLong: (bytes) =>
      told.line(escapeBytes(bytes), {
        event: {
          kind: "unknown-line",
          says: `More than ${longestLine} characters came without a line end. That is noise or a wrong speed: check speed and parity.`,
        },
      }),
  });

  function meaningOf(text: string, bytes: Uint8Array): NonNullable<LineMeaning> {
    if (asked !== undefined && text.trim() === echo)
      return { event: { kind: "housekeeping", says: `The balance repeats the request "${asked}".` } };
    const meaning = reader(text, bytes) ?? unknownLine(text);
    if (!("reading" in meaning) || width.fits(text.length)) return meaning;
    return {
      event: {
        kind: "damaged",
        says: `"${text}" is not as long as the lines before it, so characters may be missing. It is taken once lines of this length have come three times in a row.`,
      },
    };
  }

  function expectLines(): void {
    callOffSilence();
    heardMs = clock.monotonicMs();
    if (Number.isFinite(patienceMs)) callOffSilence = clock.after(patienceMs, silent);
  }

  function silent(): void {
    const seconds = Math.round((clock.monotonicMs() - heardMs) / 1000);
    told.event(
      "silent",
      asked !== undefined
        ? `${name} was asked with "${asked}" for ${seconds} s and nothing came back. Check the request and its line end against its manual, its speed and parity, and the cable.`
        : `${name} has been silent for ${seconds} s. Its last weight is old and is not taken. Check that it is on, that it sends by itself, and the cable.`,
    );
  }

  return {
    opened() {
      cutter.reset();
      reader = read();
      width.reset();
      expectLines();
    },
    bytes(chunk) {
      callOffIdle();
      expectLines();
      cutter.push(chunk);
      if (cutter.waiting) callOffIdle = clock.after(cutter.idleMs ?? usualIdleMs, () => cutter.idle());
    },
    report(bytes, meaning) {
      expectLines();
      told.line(escapeBytes(bytes), meaning);
    },
    closed() {
      callOffIdle();
      callOffSilence();
      cutter.reset();
    },
  };
}
