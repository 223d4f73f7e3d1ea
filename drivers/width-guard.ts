import type { Clock } from "./clock.ts";

/** So many lines of one length in a row make it the usual one; so many in a row of another length make that usual too. */
const usualAfter = 8;
const newAfter = 3;
/** Lines further apart than this come on a key and are not compared: each of them counts, ms. */
const streamGapMs = 1500;

/** Watches the length of lines in a stream. */
export interface WidthGuard {
  /** false for a line that is shorter or longer than the stream has been: it may have lost or gained characters */
  fits(length: number): boolean;
  reset(): void;
}

/**
 * A balance that sends by itself writes its lines in one length, or in a few. A line that lost its first characters
 * may still look like a weight ("034 g"); its length gives it away.
 */
export function createWidthGuard(clock: Clock): WidthGuard {
  let usual = new Set<number>();
  let current = 0;
  let inARow = 0;
  let lastMs = Number.NEGATIVE_INFINITY;
  function reset(): void {
    usual = new Set();
    inARow = 0;
  }
  return {
    fits(length) {
      const nowMs = clock.monotonicMs();
      if (nowMs - lastMs > streamGapMs) reset();
      lastMs = nowMs;
      inARow = length === current ? inARow + 1 : 1;
      current = length;
      if (usual.has(length)) return true;
      if (inARow >= (usual.size === 0 ? usualAfter : newAfter)) usual.add(length);
      return usual.size === 0 || usual.has(length);
    },
    reset,
  };
}
