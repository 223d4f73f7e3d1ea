import type { Clock } from "./clock.ts";
import { escapeBytes } from "./escape.ts";
import { createLineCutter, idleMs, longestLine } from "./line.ts";
import type { LineReader } from "./reading.ts";
import { unknownLine } from "./shapes/index.ts";
import type { Told } from "./told.ts";

/** How long a balance that sends by itself may be silent before that is told, ms. */
export const defaultPatienceMs = 2000;

export interface ListeningOptions {
  clock: Clock;
  told: Told;
  /** a fresh reader for every opening, so that nothing is remembered across a lost cable */
  read: () => LineReader;
  patienceMs: number;
  /** for people: which balance falls silent */
  name: string;
}

/** The way from bytes to told lines, and the watch over silence; the same for every kind of cable. */
export interface Listening {
  /** the line is open: forget earlier bytes, start to expect lines */
  opened(): void;
  bytes(chunk: Uint8Array): void;
  /** the line is closed: nothing is expected */
  closed(): void;
}

export function createListening({ clock, told, read, patienceMs, name }: ListeningOptions): Listening {
  let reader = read();
  let callOffIdle = () => {};
  let callOffSilence = () => {};
  let heardMs = 0;

  const cutter = createLineCutter({
    onLine: ({ bytes, text }) => told.line(escapeBytes(bytes), reader(text) ?? unknownLine(text)),
    onTooLong: (bytes) =>
      told.line(escapeBytes(bytes), {
        event: {
          kind: "unknown-line",
          says: `More than ${longestLine} characters came without a line end. That is noise or a wrong speed: check speed and parity.`,
        },
      }),
  });

  function expectLines(): void {
    callOffSilence();
    heardMs = clock.monotonicMs();
    if (Number.isFinite(patienceMs)) callOffSilence = clock.after(patienceMs, silent);
  }

  function silent(): void {
    const seconds = Math.round((clock.monotonicMs() - heardMs) / 1000);
    told.event(
      "silent",
      `${name} has been silent for ${seconds} s. Its last weight is old and is not taken. Check that it is on, that it sends by itself, and the cable.`,
    );
  }

  return {
    opened() {
      cutter.reset();
      reader = read();
      expectLines();
    },
    bytes(chunk) {
      callOffIdle();
      expectLines();
      cutter.push(chunk);
      if (cutter.waiting) callOffIdle = clock.after(idleMs, () => cutter.idle());
    },
    closed() {
      callOffIdle();
      callOffSilence();
      cutter.reset();
    },
  };
}
