import type { Entry } from "./entry.ts";
import { isVoided } from "./projection.ts";

/** How a record stands: declared void, amended, valid, or, of something that states no result, open. */
export const recordStates = ["VOID", "AMENDED", "VALID", "OPEN"] as const;
export type RecordState = (typeof recordStates)[number];

/** The state that follows from everything written about one subject. */
export function recordState(entries: Entry[]): RecordState {
  if (isVoided(entries)) return "VOID";
  if (entries.some(({ kind }) => kind === "amendment")) return "AMENDED";
  return entries.some(({ kind }) => kind === "result" || kind === "imported-weighing") ? "VALID" : "OPEN";
}
