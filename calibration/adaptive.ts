import { repeats } from "./repeats.ts";

/** What one block of trials says: estimate, standard uncertainty, both ends of the interval. */
export type Figures = readonly [value: number, u: number, low: number, high: number];

/** The numerical tolerance of JCGM 101:2008, 7.9.2: half a unit of the last of `digits` significant digits of u. */
export function numericalTolerance(u: number, digits: number): number {
  if (!(u > 0 && Number.isFinite(u))) return 0;
  return 0.5 * 10 ** (Math.floor(Math.log10(Number(u.toPrecision(digits)))) - digits + 1);
}

/** How long to go on. */
export interface Patience {
  /** significant digits of u that must stand, JCGM 101 n_dig */
  digits: 1 | 2;
  /** run to this part of the tolerance; JCGM 101:2008, 8.2 asks for a fifth when GUM is being validated */
  part: number;
  /** blocks at least and at most */
  blocks: readonly [least: number, most: number];
  /** the figures that must stand: all four, or the ends where only the interval is quoted */
  watched: "all" | "ends";
}

/**
 * The adaptive procedure of JCGM 101:2008, 7.9: independent blocks until twice the standard deviation of the block
 * averages of the watched figures is within the tolerance. Returns the averages, the standard deviations of these
 * averages, and whether the whole tolerance was reached, with or without the part of it that was asked for.
 */
export function adaptive(
  block: () => Figures,
  { digits, part, blocks: [least, most], watched }: Patience,
): { averages: Figures; deviations: Figures; blocks: number; settled: boolean } {
  const seen: Figures[] = [];
  const watchedOf = (figures: Figures) => figures.slice(watched === "ends" ? 2 : 0);
  for (;;) {
    seen.push(block());
    if (seen.length < least) continue;
    const columns = [0, 1, 2, 3].map((i) => repeats(seen.map((figures) => figures[i]!)));
    const averages = columns.map((c) => c.mean) as unknown as Figures;
    const deviations = columns.map((c) => c.s / Math.sqrt(seen.length)) as unknown as Figures;
    const tolerance = numericalTolerance(averages[1], digits);
    const settled = watchedOf(deviations).every((s) => 2 * s <= part * tolerance);
    if (settled || seen.length >= most) {
      const stands = watchedOf(deviations).every((s) => 2 * s <= tolerance);
      return { averages, deviations, blocks: seen.length, settled: stands };
    }
  }
}
