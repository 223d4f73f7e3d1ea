/** The step of a display from what it showed: some count by twos, fives or tens in their last place. */
export type DisplayStep = (value: number, place: number) => number;

/** Steps looked for, in last places, with how many different values must agree before one is believed. */
const candidates = [
  { places: 10, different: 4 },
  { places: 5, different: 5 },
  { places: 2, different: 9 },
] as const;

/** Remembers the different values of one last place; a finer or coarser display begins anew. */
export function createDisplayStep(): DisplayStep {
  let known = { place: 0, seen: new Set<number>(), possible: [...candidates] };
  return (value, place) => {
    if (place !== known.place) known = { place, seen: new Set(), possible: [...candidates] };
    const counts = Math.round(value / place);
    known.possible = known.possible.filter(({ places }) => counts % places === 0);
    if (known.possible.length === 0) return place;
    if (known.seen.size < 20) known.seen.add(counts);
    const found = known.possible.find(({ different }) => known.seen.size >= different);
    return place * (found?.places ?? 1);
  };
}
