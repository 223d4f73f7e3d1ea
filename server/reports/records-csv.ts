import { localTime } from "../../calibration/local-time.ts";
import { csvLine } from "../ledger/csv.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { statementCells, statementHeadings } from "./statement-cells.ts";

const pageRows = 500;

/**
 * Finished measurements as CSV, of one lot or all, newest first, with readings, conditions and what was stated: ISO 8601
 * dates in UTC and on the clock of the place, decimal point, units in the headings. New columns come behind the old ones.
 */
export async function* recordsCsv(
  ledger: Ledger,
  filters: { lot?: string } = {},
  zone = "UTC",
): AsyncGenerator<string> {
  yield csvLine([
    "measured at (ISO 8601 UTC)",
    "bench",
    "subject",
    "ticket",
    "description",
    "claim",
    "lot",
    "operator",
    "mass (g)",
    "density (g/cm3)",
    "expanded uncertainty of density (g/cm3)",
    "state",
    "voided",
    "amendments",
    "record (SHA-256)",
    "brought by",
    "dry reading",
    "dry (g)",
    "measured at (clock of the place)",
    ...statementHeadings,
  ]);
  for (let before: number | null | undefined; before !== null; ) {
    const page = await ledger.records({
      filters,
      page: { size: pageRows, ...(before === undefined ? {} : { before }) },
    });
    for (const record of page.records) {
      const entries = await ledger.entriesOf(record.subject);
      yield csvLine([
        record.at,
        record.bench,
        record.subject,
        record.ticket,
        record.description,
        record.claim,
        record.lot,
        record.operator,
        record.mass_g,
        record.density_g_cm3,
        record.expanded_g_cm3,
        record.state,
        record.voided ? "voided" : "",
        record.amendments,
        record.entry_hash,
        record.customer,
        record.dry,
        record.dry_g,
        onClockOf(zone, record.at),
        ...statementCells(entries),
      ]);
    }
    before = page.next;
  }
}

/** ISO 8601 with the offset of the zone. */
function onClockOf(zone: string, at: string): string {
  const { day, time, offset } = localTime(at, zone);
  return `${day}T${time}${offset}`;
}
