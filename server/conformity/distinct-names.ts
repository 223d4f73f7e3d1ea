import { builtIn, type Library } from "../metals/library.ts";

/** Stock metal and its element are one thing to a reader; the first is named. */
const sameThing: Readonly<Record<string, string>> = {
  "el-w": "w-pure",
  "el-mo": "mo",
  "el-u": "du",
  "el-ag": "ag-999",
  "ag-9999": "ag-999",
  "el-au": "au-999",
  "au-24": "au-999",
};

/** Tells of an id whether its family, or the first name of the same thing, is among the ids as well. */
export function repeatedAmong(ids: readonly string[], library: Library): (id: string) => boolean {
  const all = new Set(ids);
  const inFamily = new Set(ids.flatMap((id) => (library.has(id) ? (library.metal(id).recipes ?? []) : [])));
  return (id) => inFamily.has(id) || all.has(sameThing[id] ?? "");
}

/** The entries for a sentence, in order: a recipe is left out when its family is there, and so is the second name of one thing. */
export function distinct<T extends { id: string }>(entries: readonly T[]): T[] {
  const isRepeated = repeatedAmong(
    entries.map(({ id }) => id),
    builtIn,
  );
  return entries.filter(
    ({ id }, place) => !isRepeated(id) && entries.findIndex((one) => one.id === id) === place,
  );
}

/** Their names, each once. */
export function distinctNames(entries: readonly { id: string; name: string }[]): string[] {
  return [...new Set(distinct(entries).map((e) => e.name))];
}

/** "a, b, c and 4 more": the first few of the distinct names, and the count of the rest. */
export function fewNames(entries: readonly { id: string; name: string }[], most: number): string {
  const names = distinctNames(entries);
  const rest = names.length - most;
  return names.slice(0, most).join(", ") + (rest > 0 ? ` and ${rest} more` : "");
}
