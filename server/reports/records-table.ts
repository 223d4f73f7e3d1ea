import { localTime } from "../../calibration/local-time.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { type Cell, type Column, statementCells, statementColumns } from "./statement-cells.ts";

/** Records read together: some milliseconds of work, after which whatever else waits has its turn. */
const pageRows = 100;

/** The columns of finished measurements, with their units. New ones come behind the old ones. */
export const recordColumns: readonly Column[] = [
  { name: "measured at (ISO 8601 UTC)", holds: "moment" },
  { name: "bench", holds: "text" },
  { name: "subject", holds: "text" },
  { name: "ticket", holds: "text" },
  { name: "description", holds: "text" },
  { name: "claim", holds: "text" },
  { name: "lot", holds: "text" },
  { name: "operator", holds: "text" },
  { name: "mass (g)", holds: "number" },
  { name: "density (g/cm3)", holds: "number" },
  { name: "expanded uncertainty of density (g/cm3)", holds: "number" },
  { name: "state", holds: "text" },
  { name: "voided", holds: "text" },
  { name: "amendments", holds: "number" },
  { name: "record (SHA-256)", holds: "text" },
  { name: "brought by", holds: "text" },
  { name: "dry reading", holds: "text" },
  { name: "dry (g)", holds: "number" },
  { name: "measured at (clock of the place)", holds: "text" },
  ...statementColumns,
];

/** Which finished measurements are taken out, and the clock of the place. */
export interface TakenOut {
  lot?: string;
  zone?: string;
}

/**
 * Finished measurements of one lot or all, newest first, some hundred at a time: readings, conditions and what was stated,
 * cell by cell in the order of the columns.
 */
export async function* recordRows(
  ledger: Ledger,
  { lot, zone = "UTC" }: TakenOut = {},
): AsyncGenerator<Cell[][]> {
  for (let before: number | null | undefined; before !== null; ) {
    const page = await ledger.records({
      filters: lot === undefined ? {} : { lot },
      page: { size: pageRows, ...(before === undefined ? {} : { before }) },
    });
    const about = await ledger.entriesOfEach(page.records.map(({ subject }) => subject));
    const rows: Cell[][] = [];
    for (const record of page.records)
      rows.push([
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
        ...statementCells(about.get(record.subject) ?? []),
      ]);
    yield rows;
    before = page.next;
  }
}

/** ISO 8601 with the offset of the zone. */
function onClockOf(zone: string, at: string): string {
  const { day, time, offset } = localTime(at, zone);
  return `${day}T${time}${offset}`;
}
