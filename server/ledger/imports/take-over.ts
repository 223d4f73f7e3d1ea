import { hash } from "node:crypto";
import { canonicalJson } from "../canonical-json.ts";
import type { BodyOf } from "../kinds.ts";
import type { Ledger } from "../ledger.ts";
import type { ImportPreview } from "./preview.ts";

/**
 * Writes the weighings of a preview into the ledger, each as an entry that says where it came from. Taking the same
 * list over again writes nothing twice. Gives how many were written.
 */
export async function takeOverWeighings(
  ledger: Ledger,
  preview: ImportPreview,
  from: string,
): Promise<number> {
  if (preview.list !== "weighings") throw new RangeError(`A list of ${preview.list} holds no weighings.`);
  let written = 0;
  for (const { values } of preview.rows) {
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
 * Writes the tickets of a preview into the ledger as pieces that wait to be weighed. The same ticket of the same list
 * again writes nothing twice. Gives how many were written.
 */
export async function takeOverTickets(ledger: Ledger, preview: ImportPreview, from: string): Promise<number> {
  if (preview.list !== "tickets") throw new RangeError(`A list of ${preview.list} holds no tickets.`);
  let written = 0;
  for (const { values } of preview.rows) {
    const body = { ...values, from } as BodyOf<"ticket-announced">;
    const key = `ticket-${hash("sha256", canonicalJson(body), "hex")}`;
    if (await ledger.entry(key)) continue;
    await ledger.append("ticket-announced", "tickets", body, { key });
    written += 1;
  }
  return written;
}
