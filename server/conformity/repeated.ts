import type { Library } from "../metals/library.ts";

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
