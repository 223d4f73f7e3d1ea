import { message } from "../../calibration/message.ts";
import type { Computed } from "./aside.ts";
import { compute } from "./compute.ts";

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
    request = JSON.parse(line);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return {
      request,
      answer: {
        id: null,
        error: { at: "", message: message("compute.not-json", { why }) },
      },
    };
  }
  return { request, answer: compute(request) };
}
