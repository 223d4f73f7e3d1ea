import { compute } from "./compute.ts";
import type { ComputeError, ComputeResponse } from "./contract.ts";

/** Answers one line of JSON Lines; null for an empty line. */
export function answerLine(line: string): ComputeResponse | ComputeError | null {
  if (line.trim() === "") return null;
  let request: unknown;
  try {
    request = JSON.parse(line);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return {
      id: null,
      error: { at: "", message: `The line is not JSON (${why}). Right: one whole object on each line.` },
    };
  }
  return compute(request);
}
