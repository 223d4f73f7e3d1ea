import type { Clock } from "./clock.ts";

export interface PlayedClock extends Clock {
  /** goes on to this time and runs what falls due on the way, in order */
  passTo(atMs: number): void;
}

/** A clock that stands still until it is moved on: for recordings, whose times are long past. */
export function createPlayedClock(startMs = 0): PlayedClock {
  let nowMs = startMs;
  let due: { atMs: number; run: () => void }[] = [];
  return {
    wallMs: () => nowMs,
    monotonicMs: () => nowMs,
    after(ms, run) {
      const entry = { atMs: nowMs + ms, run };
      due.push(entry);
      return () => {
        due = due.filter((other) => other !== entry);
      };
    },
    passTo(atMs) {
      for (;;) {
        const next = due.reduce<(typeof due)[number] | undefined>(
          (first, one) => (one.atMs <= atMs && (!first || one.atMs < first.atMs) ? one : first),
          undefined,
        );
        if (!next) break;
        due = due.filter((one) => one !== next);
        nowMs = Math.max(nowMs, next.atMs);
        next.run();
      }
      nowMs = Math.max(nowMs, atMs);
    },
  };
}
