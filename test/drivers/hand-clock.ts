import type { Clock } from "../../drivers/clock.ts";
import { createPlayedClock } from "../../drivers/played-clock.ts";

/** A clock whose hands the test turns. */
export interface HandClock extends Clock {
  /** lets so many ms pass and runs what falls due, in order */
  pass(ms: number): void;
  /** the wall clock jumps; the monotonic one does not */
  jumpWall(ms: number): void;
}

export function createHandClock(): HandClock {
  const clock = createPlayedClock(1_000);
  let wallOffsetMs = Date.UTC(2026, 2, 4, 9, 0, 0);
  return {
    ...clock,
    wallMs: () => clock.monotonicMs() + wallOffsetMs,
    pass: (ms) => clock.passTo(clock.monotonicMs() + ms),
    jumpWall(ms) {
      wallOffsetMs += ms;
    },
  };
}
