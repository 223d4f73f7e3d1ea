import { readFileSync } from "node:fs";
import { Refusal } from "../../calibration/refusal.ts";
import { recordingFromLines } from "../../drivers/learning/recording.ts";
import { errorFacts } from "../../drivers/port-error.ts";

/** The recording in a file. Throws Refusal with its path when it cannot be read, and when it is no recording. */
export const recordingIn = (path: string) => recordingFromLines(textIn(path, "--recording"));

/** The text of a file that an option names. Throws Refusal with its path when it cannot be read. */
export function textIn(path: string, option: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch (error) {
    throw new Refusal("recording.unreadable", { path, reason: errorFacts(error).message }, option);
  }
}
