import { Refusal } from "../calibration/refusal.ts";

/** The refusal that a call ends in; fails where it does not refuse. */
export function refusalOf(call: () => unknown): Refusal {
  try {
    call();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error("Nothing was refused.");
}
