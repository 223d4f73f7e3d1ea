import { messageOf } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { compute } from "./compute.ts";
import type { Computed } from "./compute-thread.ts";
import { requestIn } from "./request-json.ts";

/** A line with its answer; the request is undefined where the line is no JSON. */
export interface Answered {
  request: unknown;
  answer: Computed;
}

/** Answers one line of JSON Lines; null for an empty line. */
export function answerLine(line: string): Answered | null {
  if (line.trim() === "") return null;
  let request: unknown;
  try {
    request = requestIn(line);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { request, answer: { id: null, error: { at: "", message: messageOf(error) } } };
  }
  return { request, answer: compute(request) };
}
