/** Numbers drawn by lot, the same for the same seed. Generator: xorshift32, Marsaglia 2003 [from memory]. */
export interface Lot {
  /** uniform in [0, 1) */
  part(): number;
  whole(from: number, to: number): number;
  one<T>(of: readonly T[]): T;
  /** bell-shaped, mean 0, standard deviation about 1 */
  bell(): number;
}

export function lot(seed: number): Lot {
  let state = (seed * 2654435761) >>> 0 || 1;
  const part = () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i += 1) part();
  return {
    part,
    whole: (from, to) => from + Math.floor(part() * (to - from + 1)),
    one: (of) => of[Math.floor(part() * of.length)]!,
    bell: () => Array.from({ length: 12 }, part).reduce((sum, one) => sum + one, -6),
  };
}
