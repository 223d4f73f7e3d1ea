/** Repeatable chance for invented balances: the same seed gives the same balance. */
export interface Chance {
  /** 0 ≤ x < 1 */
  unit(): number;
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  yes(share: number): boolean;
  pick<T>(from: readonly T[]): T;
  /** mean 0, standard deviation 1 */
  normal(): number;
}

/** Mulberry32, a well-known 32-bit generator in the public domain [from memory]; only repeatability matters here. */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const unit = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    unit,
    between: (low, high) => low + (high - low) * unit(),
    whole: (low, high) => low + Math.floor(unit() * (high - low + 1)),
    yes: (share) => unit() < share,
    pick: (from) => from[Math.floor(unit() * from.length)]!,
    normal: () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
  };
}
