import type { Flag, TakenValue } from "../calibration/stable-reading/stable-reading.ts";
import type { Reading } from "./reading.ts";
import type { ReadingRecord } from "./steadiness.ts";

/** Where the display was going when the reading was taken, and how well that was known. */
export interface AtRest {
  grams: number;
  /** standard uncertainty of this reading alone, g */
  uGrams: number;
  /** of that, what may still come: the drift at reading, g */
  driftUGrams: number;
  /** the most that a creep may bring which was not excluded when it was taken, g; 0 where none is possible */
  possibleGrams: number;
  flags: readonly Flag[];
}

/** A reading taken for the record, with the lines it was taken from. */
export interface Captured {
  /** the line that shows its value best; its decimals as sent */
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
  /** left out where a hand took a line of which too little is known */
  atRest?: AtRest;
}

/** So many of the lines a reading was taken from are kept with it. */
const keptLines = 60;

/** The lines that arrived last, with one more. */
export const withLine = (lines: readonly ReadingRecord[], record: ReadingRecord): ReadingRecord[] => [
  ...lines.slice(-keptLines + 1),
  record,
];

/** The lines since it came to rest, and of them the newest that shows what it rests at best. */
export function linesAtRest(
  lines: readonly ReadingRecord[],
  { since, value }: { since: number; value: number },
): { lines: ReadingRecord[]; shown: ReadingRecord } {
  const resting = lines.filter(({ monotonicMs }) => monotonicMs >= since * 1000);
  const off = (record: ReadingRecord) => Math.abs(Number(record.reading.grams) - value);
  const shown = resting.reduce((best, one) => (off(one) <= off(best) ? one : best));
  return { lines: resting, shown };
}

/** A value that was taken, as a capture carries it. */
export const atRestOf = ({ value, u, uDrift, possible, flags }: TakenValue): AtRest => ({
  grams: value,
  uGrams: u,
  driftUGrams: uDrift,
  possibleGrams: possible,
  flags,
});
