import { statSync } from "node:fs";
import { sql } from "kysely";
import { type Message, message } from "../../calibration/message.ts";
import { LedgerError } from "./error.ts";
import type { Store } from "./tables.ts";
import { verifyTail } from "./verification.ts";

/** Files up to this size are checked page by page at every start; larger ones after a hard stop only. */
const alwaysCheckedBytes = 32 * 2 ** 20;

/** How many of the last entries are checked at every start. */
const checkedEntries = 300;

/**
 * Checks a ledger that is about to be written: the pages of the file, and the chain of the last entries.
 * Throws LedgerError "damaged": nothing is written behind something that is broken.
 */
export async function checkAtStart(store: Store, stoppedHard: boolean): Promise<void> {
  if (stoppedHard || statSync(store.place).size <= alwaysCheckedBytes) {
    const found = await sql<{ quick_check: string }>`pragma quick_check(3)`.execute(store.db);
    const wrong = found.rows.map((row) => row.quick_check).filter((one) => one !== "ok");
    if (wrong.length > 0) damaged(store.place, message("ledger.fault.pages", { found: wrong }));
  }
  const fault = await verifyTail(store, checkedEntries);
  if (fault !== null) damaged(store.place, fault);
}

function damaged(place: string, fault: Message): never {
  throw new LedgerError("ledger.start.damaged", { place, fault }, "damaged");
}
