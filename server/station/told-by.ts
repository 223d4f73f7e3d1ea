import { Refusal } from "../../calibration/refusal.ts";
import type { Told } from "../../views/told.tsx";

/** What an error that ended a capture tells a person. */
export function toldBy(error: unknown): Told {
  if (error instanceof Refusal) return { code: error.code, params: error.params };
  return error instanceof Error ? error.message : String(error);
}
