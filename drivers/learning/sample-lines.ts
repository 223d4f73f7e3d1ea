import { type Message, message } from "../../calibration/message.ts";
import type { Observed } from "./recording.ts";

/** Two lines as they came, for people. */
export function sampleLines(lines: readonly Observed[]): Message[] {
  const different = [...new Set(lines.map(({ shown }) => shown))];
  return different.slice(0, 2).map((mark) => message("learn.mark", { mark }));
}
