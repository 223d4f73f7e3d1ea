import type { Capture, Item } from "./item.ts";

/** The weighing once the loads of these readings, by their ids, were watched until a creep was excluded. */
export function withWatched(item: Item, ids: readonly string[]): Item {
  if (ids.length === 0) return item;
  return { ...item, captures: item.captures.map((one) => (ids.includes(one.id) ? watched(one) : one)) };
}

/** Ids of the readings that were watched so. */
export const watchedIn = ({ captures }: Item): string[] =>
  captures.filter((one) => one.watched).map(({ id }) => id);

/** True for a reading that was taken before a creep was excluded, and has not been watched for long enough since. */
export const isUnwatched = ({ atRest, watched: seen }: Capture): boolean =>
  !seen && (atRest?.possible_g ?? 0) > 0;

/** What was open at the take is so no more; the entry of the reading stays as it was written. */
function watched({ atRest, ...capture }: Capture): Capture {
  if (!atRest) return capture;
  const { possible_g: _, flags, ...known } = atRest;
  return {
    ...capture,
    atRest: { ...known, flags: flags.filter((flag) => flag !== "creep-possible") },
    watched: true,
  };
}
