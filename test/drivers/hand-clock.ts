import type { Clock } from "../../drivers/clock.ts";

/** A clock whose hands the test turns. */
export interface HandClock extends Clock {
  /** lets so many ms pass and runs what falls due, in order */
  pass(ms: number): void;
  /** the wall clock jumps; the monotonic one does not */
  jumpWall(ms: number): void;
}

export function createHandClock(): HandClock {
  let nowMs = 1_000;
  let wallOffsetMs = Date.UTC(2026, 2, 4, 9, 0, 0);
  let due: { atMs: number; run: () => void }[] = [];
  return {
    wallMs: () => nowMs + wallOffsetMs,
    monotonicMs: () => nowMs,
    after(ms, run) {
      const entry = { atMs: nowMs + ms, run };
      due.push(entry);
      return () => {
        due = due.filter((other) => other !== entry);
      };
    },
    pass(ms) {
      const untilMs = nowMs + ms;
      for (;;) {
        const next = due.reduce<(typeof due)[number] | null>((a, b) => (a && a.atMs <= b.atMs ? a : b), null);
        if (!next || next.atMs > untilMs) break;
        due = due.filter((other) => other !== next);
        nowMs = Math.max(nowMs, next.atMs);
        next.run();
      }
      nowMs = untilMs;
    },
    jumpWall(ms) {
      wallOffsetMs += ms;
    },
  };
}
