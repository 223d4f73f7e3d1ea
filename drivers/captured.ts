import type { Reading } from "./reading.ts";
import type { ReadingRecord } from "./steadiness.ts";

/** A reading taken for the record, with the lines it was taken from. */
export interface Captured {
  /** the newest of its lines; its decimals as sent */
  reading: Reading;
  /** how it was known to be settled */
  settledBy: "mark" | "own-criterion" | "by-hand";
  /** arrival of the newest line, ISO 8601 */
  at: string;
  /** the lines as received, oldest first */
  lines: ReadingRecord[];
  /**
   * false when every line since the previous capture was the very same: either the load was not changed, or the
   * display is stuck. Worth a question before the reading is used for another step.
   */
  stirred: boolean;
}
