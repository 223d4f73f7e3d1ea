import type { Clock } from "../clock.ts";
import { type LineFault, spoiled } from "./faults.ts";
import type { createSeededRandom } from "./seeded-random.ts";

export interface SendingOptions {
  clock: Clock;
  linesPerSecond: number;
  random: ReturnType<typeof createSeededRandom>;
  /** the next line of the balance */
  line(): string;
  /** false while its cable is out */
  plugged(): boolean;
  /** takes the bytes at the other end */
  bytes(chunk: Uint8Array): void;
}

/** Sends line after line, and what faults make of them. */
export function createSending({ clock, linesPerSecond, random, line, plugged, bytes }: SendingOptions) {
  let quiet = false;
  let stuckLine: string | null = null;
  let lastLine = "";
  let faults: LineFault[] = [];
  let callOffNext = () => {};

  function send(text: string): void {
    const fault = faults.shift();
    const whole = Buffer.from(text, "latin1");
    const sent = fault ? spoiled(whole, fault, random) : whole;
    // Cables deliver in pieces.
    const cut = random.whole(sent.length + 1);
    bytes(sent.subarray(0, cut));
    bytes(sent.subarray(cut));
  }
  function tick(): void {
    callOffNext = clock.after(1000 / linesPerSecond, tick);
    if (!plugged() || quiet) return;
    lastLine = stuckLine ?? line();
    send(lastLine);
  }
  const spoil = (fault: LineFault) => (lines: number) => {
    faults = [...faults, ...Array<LineFault>(lines).fill(fault)];
  };
  return {
    begin: tick,
    end: () => callOffNext(),
    silence() {
      quiet = true;
    },
    stick() {
      stuckLine = lastLine || line();
    },
    thaw() {
      quiet = false;
      stuckLine = null;
    },
    wake() {
      quiet = false;
    },
    garble: spoil("garbled"),
    halve: spoil("halved"),
    double: spoil("doubled"),
    say(text: string) {
      if (plugged() && !quiet) send(text);
    },
  };
}
