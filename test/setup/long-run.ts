/**
 * How much of the long runs is made: `npm test` takes a seeded part, `npm run nightly` all of it. The one place that
 * reads the switches.
 */
export const whole = process.env.UNDERHOOK_NIGHTLY === "1";

/** Pictures of pages are taken by night, and by day when UNDERHOOK_PICTURES=1 asks for them. */
export const pictures = whole || process.env.UNDERHOOK_PICTURES === "1";

/** By day every run repeats the last one; a night walks the ground of its date (UTC, as 20261125). */
const ofTheDay = whole ? Number(new Date().toISOString().slice(0, 10).replaceAll("-", "")) : 20261125;

/** What everything drawn by chance starts from. */
export const seed = Number(process.env.UNDERHOOK_SEED ?? ofTheDay);

/** The count of a long run: all of it by night, a tenth (or the given part) by day. */
export function longRun(all: number, byDay = Math.ceil(all / 10)): number {
  return whole ? all : byDay;
}

/** Looks at a page: all of them by night; by day one for each place in a list, in turn, so that every look is taken. */
export function looksAt<Look>(looks: readonly Look[], place: number): readonly Look[] {
  return whole ? looks : [looks[place % looks.length]!];
}

/** All of a list by night; by day every third, which ones by the seed. */
export function someByDay<One>(all: readonly One[]): readonly One[] {
  return whole ? all : all.filter((_, place) => place % 3 === seed % 3);
}
