import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { run as exportRun } from "../../../server/cli/export.ts";
import { csvRows } from "../../../server/ledger/csv.ts";
import { peers, provide } from "../../setup/debian.ts";
import { whole } from "../../setup/long-run.ts";
import { buildTestBench } from "../build.ts";
import { testFolder } from "../ledger/bench-ledger.ts";
import { recorded } from "../web/recorded.ts";

const pieces = [
  { id: "one", claim: "ag-925", customer: "the mill, quay 3", dry: "31.1035", immersed: "28.1035" },
  { id: "two", claim: "ag-925", dry: "31.1035", immersed: "29.7035" },
  { id: "Ω-3", claim: "au-750", dry: "15.5550", immersed: "14.5450" },
  { id: "four", claim: "", dry: "8.1000", immersed: "7.1900" },
];

/** A bench with these pieces recorded, the second void, taken out in a form. */
async function takenOut(...forms: string[]): Promise<string[]> {
  const at = await buildTestBench();
  try {
    for (const piece of pieces) await recorded(at, piece);
    const voided = await at.post("/records/two/voiding", { reason: "wrong piece", by: "KW" });
    if (voided.statusCode !== 303) throw new Error(voided.body);
    const files: string[] = [];
    for (const form of forms) {
      const file = join(testFolder(), form);
      expect(await exportRun([`--${form}`, "--out", file, "--ledger", at.file])).toBe(0);
      files.push(file);
    }
    return files;
  } finally {
    await at.close();
  }
}

test("a Parquet file holds the columns and values of the CSV, read by the Arrow project's own reader", async () => {
  const [csv = "", parquet = ""] = await takenOut("csv", "parquet");
  const [head, ...rows] = [...csvRows(readFileSync(csv, "utf8"))].map(({ cells }) => cells);
  const read = JSON.parse(
    execFileSync(process.execPath, ["test/server/reports/parquet-rows.mjs", parquet], { encoding: "utf8" }),
  ) as { columns: Record<string, string>; rows: (string | number | null)[][] };
  expect(Object.keys(read.columns)).toEqual(head);
  expect(read.columns["measured at (ISO 8601 UTC)"]).toBe("Timestamp<MILLISECOND, UTC>");
  expect(read.columns["density (g/cm3)"]).toBe("Float64");
  const asText = (cell: string | number | null, place: number) => {
    if (cell === null) return "";
    return place === 0 ? new Date(cell).toISOString() : String(cell);
  };
  expect(read.rows.map((cells) => cells.map(asText))).toEqual(rows);
  expect(rows).toHaveLength(pieces.length);
});

/** Runs the code of a notebook, cell after cell, on an exported file. */
function printedBy(notebook: string, program: readonly string[], records: string): string {
  const { cells } = JSON.parse(readFileSync(join("test", "notebooks", notebook), "utf8")) as {
    cells: { cell_type: string; source: string[] }[];
  };
  const code = cells.flatMap(({ cell_type, source }) => (cell_type === "code" ? [source.join("")] : []));
  const [path = "", ...args] = program;
  return execFileSync(path, [...args, code.join("\n")], {
    encoding: "utf8",
    env: { ...process.env, RECORDS: records, LC_ALL: "C.UTF-8" },
  });
}

if (whole)
  test("the notebooks for Python and R count in the export what was weighed, and print the same", async () => {
    provide(peers.pandas, peers.r);
    const [csv = ""] = await takenOut("csv");
    const python = printedBy("records-python.ipynb", ["/usr/bin/python3", "-c"], csv);
    const r = printedBy("records-r.ipynb", [peers.r.path, "--vanilla", "-e"], csv);
    console.log(python);
    expect(r).toBe(python);
    expect(python).toMatch(/^records 4, standing 3\n/);
    expect(python.match(/^ag-925 \S+ 1$/m)).not.toBeNull();
    expect(python.match(/^au-750 U \d\.\d{4} %$/m)).not.toBeNull();
  }, 300_000);
