import { type Clock, isoTime } from "./clock.ts";
import type { BalanceEvent, LineMeaning, LineRecord } from "./reading.ts";

/** Tells line records to everyone who asked for them. The one place where a record gets its times. */
export interface Told {
  onLine(listener: (record: LineRecord) => void): () => void;
  line(raw: string, meaning: NonNullable<LineMeaning>): void;
  event(kind: BalanceEvent["kind"], says: string): void;
}

export function createTold(clock: Clock): Told {
  const listeners = new Set<(record: LineRecord) => void>();
  function tell(raw: string, meaning: NonNullable<LineMeaning>): void {
    const record: LineRecord = { at: isoTime(clock), monotonicMs: clock.monotonicMs(), raw, ...meaning };
    for (const listener of listeners) listener(record);
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
