import { type Clock, isoTime } from "./clock.ts";
import { type BalanceEvent, type LineMeaning, type LineRecord, lineEvent, type Reading } from "./reading.ts";

/** Hands line records to everyone who asked for them. The one place where a record gets its times. */
export interface LineRecords<R = Reading> {
  onLine(listener: (record: LineRecord<R>) => void): () => void;
  line(raw: string, meaning: NonNullable<LineMeaning<R>>): void;
  event(happened: { event: BalanceEvent }): void;
}

/** The wall clock is set while we listen: a larger step than this is told, ms. */
const clockStepMs = 2000;

export function createLineRecords<R = Reading>(clock: Clock): LineRecords<R> {
  let offsetMs = clock.wallMs() - clock.monotonicMs();
  const listeners = new Set<(record: LineRecord<R>) => void>();
  function give(raw: string, meaning: NonNullable<LineMeaning<R>>): void {
    const record: LineRecord<R> = { at: isoTime(clock), monotonicMs: clock.monotonicMs(), raw, ...meaning };
    for (const listener of listeners) listener(record);
  }
  function line(raw: string, meaning: NonNullable<LineMeaning<R>>): void {
    const stepMs = clock.wallMs() - clock.monotonicMs() - offsetMs;
    offsetMs += stepMs;
    if (Math.abs(stepMs) > clockStepMs)
      give(
        "",
        lineEvent("line.clock-jumped", {
          direction: stepMs > 0 ? "forward" : "back",
          seconds: Math.round(Math.abs(stepMs) / 1000),
        }),
      );
    give(raw, meaning);
  }
  return {
    onLine(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    line,
    event: (happened) => line("", happened),
  };
}
