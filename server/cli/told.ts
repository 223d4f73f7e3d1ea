import { Refusal } from "../../calibration/refusal.ts";
import { tell } from "../../views/messages/tell.ts";
import { LedgerError } from "../ledger/error.ts";

/** Runs a command; what goes wrong is said in words on standard error, and the exit status is 1 (damage) or 2. */
export async function told(command: string, work: () => Promise<number>): Promise<number> {
  try {
    return await work();
  } catch (cause) {
    console.error(`underhook ${command}: ${inEnglish(cause)}`);
    return cause instanceof LedgerError && cause.kind === "damaged" ? 1 : 2;
  }
}

/** What a command says of an error: its message in English, or what the program threw. */
export function inEnglish(cause: unknown): string {
  if (cause instanceof LedgerError || cause instanceof Refusal) return tell(cause, "en");
  return cause instanceof Error ? cause.message : String(cause);
}
