import { type Clock, isoTime } from "./clock.ts";
import type { BalanceEvent, LineMeaning, LineRecord } from "./reading.ts";

/** Tells line records to everyone who asked for them. The one place where a record gets its times. */
export interface Told {
  onLine(listener: (record: LineRecord) => void): () => void;
  line(raw: string, meaning: NonNullable<LineMeaning>): void;
  event(kind: BalanceEvent["kind"], says: string): void;
}

/** The wall clock is set while we listen: a larger step than this is told, ms. */
const clockStepMs = 2000;

export function createTold(clock: Clock): Told {
  let offsetMs = clock.wallMs() - clock.monotonicMs();
  const listeners = new Set<(record: LineRecord) => void>();
  function give(raw: string, meaning: NonNullable<LineMeaning>): void {
    const record: LineRecord = { at: isoTime(clock), monotonicMs: clock.monotonicMs(), raw, ...meaning };
    for (const listener of listeners) listener(record);
  }
  function tell(raw: string, meaning: NonNullable<LineMeaning>): void {
    const stepMs = clock.wallMs() - clock.monotonicMs() - offsetMs;
    offsetMs += stepMs;
    if (Math.abs(stepMs) > clockStepMs)
      give("", {
        event: {
          kind: "clock-jumped",
          says: `The clock of this computer was moved ${stepMs > 0 ? "forward" : "back"} by ${Math.round(Math.abs(stepMs) / 1000)} s. The order of the readings is kept; check the date and time.`,
        },
      });
    give(raw, meaning);
  }
  return {
    onLine(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    line: tell,
    event: (kind, says) => tell("", { event: { kind, says } }),
  };
}
