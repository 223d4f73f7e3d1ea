import { csvLine } from "../ledger/csv.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { recordColumns, recordRows, type TakenOut } from "./records-table.ts";

/** Finished measurements as CSV: ISO 8601 dates, decimal point, units in the headings. */
export async function* recordsCsv(ledger: Ledger, which?: TakenOut): AsyncGenerator<string> {
  yield csvLine(recordColumns.map(({ name }) => name));
  for await (const rows of recordRows(ledger, which)) yield rows.map((cells) => csvLine(cells)).join("");
}
