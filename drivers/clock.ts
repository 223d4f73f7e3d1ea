/** Time as the drivers see it; passed in, so that tests turn the hands themselves. */
export interface Clock {
  /** wall clock, ms since 1970; may jump */
  wallMs(): number;
  /** a clock that never jumps, ms from an arbitrary start */
  monotonicMs(): number;
  /** runs something once after so many ms; returns the function that calls it off */
  after(ms: number, run: () => void): () => void;
}

/** The machine's own clocks. Waiting for a balance never keeps a process alive that has nothing else to do. */
export const systemClock: Clock = {
  wallMs: () => Date.now(),
  monotonicMs: () => performance.now(),
  after(ms, run) {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};

/** Wall time of a clock as a record carries it: ISO 8601, UTC, milliseconds. */
export function isoTime(clock: Clock): string {
  return new Date(clock.wallMs()).toISOString();
}
