import type { Ledger } from "../ledger/ledger.ts";
import { recordColumns, recordRows, type TakenOut } from "./records-table.ts";
import type { Cell, Column } from "./statement-cells.ts";

/** Rows that are written together: large enough to be read fast, small enough to be held. */
const groupRows = 10_000;

const types = { moment: "TIMESTAMP", number: "DOUBLE", text: "STRING" } as const;

/**
 * Finished measurements as an Apache Parquet file, with the columns of the CSV: moments as UTC timestamps, numbers as
 * doubles, what is not known as null. Bytes as they are made, group after group.
 */
export async function* recordsParquet(ledger: Ledger, which?: TakenOut): AsyncGenerator<Uint8Array> {
  const { ByteWriter, ParquetWriter, schemaFromColumnData } = await import("hyparquet-writer");
  const writer = new ByteWriter();
  const columnData = (rows: readonly Cell[][]) =>
    recordColumns.map((column, place) => ({
      name: column.name,
      type: types[column.holds],
      data: rows.map((cells) => inFile(cells[place], column)),
    }));
  const file = new ParquetWriter({
    writer,
    schema: schemaFromColumnData({ columnData: columnData([]) }),
    createdBy: "underhook",
  });
  const write = (rows: readonly Cell[][]) => {
    // the types stand in the schema already
    const data = columnData(rows).map(({ type: _type, ...column }) => column);
    return file.write({ columnData: data, rowGroupSize: groupRows });
  };
  const taken = () => {
    const bytes = writer.getBytes().slice();
    writer.index = 0;
    return bytes;
  };
  let waiting: Cell[][] = [];
  for await (const rows of recordRows(ledger, which)) {
    waiting.push(...rows);
    if (waiting.length < groupRows) continue;
    await write(waiting);
    waiting = [];
    yield taken();
  }
  if (waiting.length > 0) await write(waiting);
  await file.finish();
  yield taken();
}

function inFile(cell: Cell, column: Column): string | number | Date | null {
  if (cell === undefined || cell === null) return null;
  return column.holds === "moment" ? new Date(cell) : cell;
}
