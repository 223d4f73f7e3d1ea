import { hash } from "node:crypto";
import { canonicalJson } from "../canonical-json.ts";
import type { BodyOf } from "../kinds.ts";
import type { Ledger, Listed } from "../ledger.ts";
import type { Steps } from "../turns.ts";
import type { ImportPreview } from "./preview.ts";

/**
 * Writes the weighings of a list into the ledger, each as an entry that says where it came from. Taking the same
 * list over again writes nothing twice. Gives how many were written. Throws LedgerError.
 */
export function takeOverWeighings(
  ledger: Pick<Ledger, "appendEach">,
  rows: ImportPreview["rows"],
  from: string,
  options?: Steps,
): Promise<number> {
  return ledger.appendEach(weighingsOf(rows, from), options);
}

/** Row by row, as each is written: the keys of a long list take their time. */
function* weighingsOf(rows: ImportPreview["rows"], from: string): Generator<Listed> {
  for (const { values } of rows) {
    const { measured_at: measuredAt, ...rest } = values;
    const key = `import-${hash("sha256", canonicalJson(values), "hex")}`;
    const body = { ...rest, measuredAt, from } as BodyOf<"imported-weighing">;
    yield { kind: "imported-weighing", subject: `imported:${key.slice(7, 23)}`, body, key };
  }
}

/**
 * Writes the tickets of a list into the ledger as pieces that wait to be weighed. The same ticket of the same list
 * again writes nothing twice. Gives how many were written. Throws LedgerError.
 */
export function takeOverTickets(
  ledger: Pick<Ledger, "appendEach">,
  rows: ImportPreview["rows"],
  from: string,
  options?: Steps,
): Promise<number> {
  return ledger.appendEach(ticketsOf(rows, from), options);
}

function* ticketsOf(rows: ImportPreview["rows"], from: string): Generator<Listed> {
  for (const { values } of rows) {
    const body = { ...values, from } as BodyOf<"ticket-announced">;
    const key = `ticket-${hash("sha256", canonicalJson(body), "hex")}`;
    yield { kind: "ticket-announced", subject: "tickets", body, key };
  }
}
