import { LedgerTrouble } from "../ledger/trouble.ts";

/** Runs a command; what goes wrong is said in words on standard error, and the exit status is 1 (damage) or 2. */
export async function told(command: string, work: () => Promise<number>): Promise<number> {
  try {
    return await work();
  } catch (cause) {
    console.error(`underhook ${command}: ${cause instanceof Error ? cause.message : String(cause)}`);
    return cause instanceof LedgerTrouble && cause.kind === "damaged" ? 1 : 2;
  }
}
