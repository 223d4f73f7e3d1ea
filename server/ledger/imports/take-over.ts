import { hash } from "node:crypto";
import { canonicalJson } from "../canonical-json.ts";
import type { BodyOf } from "../kinds.ts";
import type { Ledger } from "../ledger.ts";
import type { ImportPreview } from "./preview.ts";

/**
 * Writes the weighings of a list into the ledger, each as an entry that says where it came from. Taking the same
 * list over again writes nothing twice. Gives how many were written.
 */
export async function takeOverWeighings(
  ledger: Ledger,
  rows: ImportPreview["rows"],
  from: string,
): Promise<number> {
  let written = 0;
  for (const { values } of rows) {
    const { measured_at: measuredAt, ...rest } = values;
    const key = `import-${hash("sha256", canonicalJson(values), "hex")}`;
    if (await ledger.entry(key)) continue;
    const body = { ...rest, measuredAt, from } as BodyOf<"imported-weighing">;
    await ledger.append("imported-weighing", `imported:${key.slice(7, 23)}`, body, { key });
    written += 1;
  }
  return written;
}

/**
 * Writes the tickets of a list into the ledger as pieces that wait to be weighed. The same ticket of the same list
 * again writes nothing twice. Gives how many were written.
 */
export async function takeOverTickets(
  ledger: Ledger,
  rows: ImportPreview["rows"],
  from: string,
): Promise<number> {
  let written = 0;
  for (const { values } of rows) {
    const body = { ...values, from } as BodyOf<"ticket-announced">;
    const key = `ticket-${hash("sha256", canonicalJson(body), "hex")}`;
    if (await ledger.entry(key)) continue;
    await ledger.append("ticket-announced", "tickets", body, { key });
    written += 1;
  }
  return written;
}
