import { type Message, message, messageOf } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { LedgerError } from "../ledger/error.ts";
import { logError } from "../log.ts";

/** What an error that ended a capture tells a person. One of the program is written to its output, not to a person. */
export function failureMessage(error: unknown): Message {
  if (error instanceof Refusal || error instanceof LedgerError) return messageOf(error);
  logError(error);
  return message("refusal.program-error");
}
