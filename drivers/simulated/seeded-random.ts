/** Seeded random numbers, so that a simulated day can be played again to the last digit. */
export interface SeededRandom {
  /** uniform in [0, 1) */
  uniform(): number;
  /** normal with mean 0 and standard deviation 1 */
  normal(): number;
  /** whole number in [0, below) */
  whole(below: number): number;
}

/** The same seed gives the same numbers. Generator: mulberry32, public domain [from memory]. */
export function createSeededRandom(seed: number): SeededRandom {
  let state = seed >>> 0;
  function uniform(): number {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }
  return {
    uniform,
    // Box and Muller's transform of two uniform numbers.
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    whole: (below) => Math.floor(uniform() * below),
  };
}
