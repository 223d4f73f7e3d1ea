import { isMetalId, metal } from "../metals/library.ts";

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

/** The entries for a sentence, in order: a recipe is left out when its family is there, and so is the second name of one thing. */
export function distinct<T extends { id: string }>(entries: readonly T[]): T[] {
  const ids = new Set(entries.map((e) => e.id));
  const inFamily = new Set([...ids].flatMap((id) => (isMetalId(id) ? (metal(id).recipes ?? []) : [])));
  return entries.filter(({ id }, place) => {
    const other = sameThing[id];
    if (inFamily.has(id) || (other !== undefined && ids.has(other))) return false;
    return entries.findIndex((one) => one.id === id) === place;
  });
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
