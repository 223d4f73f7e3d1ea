import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { run as exportRun } from "../../../server/cli/export.ts";
import { run as verify } from "../../../server/cli/verify.ts";
import { csvCell, csvLine, csvRows } from "../../../server/ledger/csv.ts";
import type { Ledger } from "../../../server/ledger/ledger.ts";
import type { RecordFile } from "../../../server/ledger/record-file.ts";
import { longRun } from "../../setup/long-run.ts";
import { spoken, testFolder, testLedger, weigh } from "./bench-ledger.ts";

async function written(ledger: Ledger, ...how: string[]): Promise<string> {
  const out = join(testFolder(), "out");
  expect(await exportRun([...how, "--out", out, "--ledger", ledger.place])).toBe(0);
  return readFileSync(out, "utf8");
}

test("the CSV names units, keeps the point, and no cell can be taken for a formula", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1", { ticket: "=1+1", description: '@cmd, "quoted"\nsecond line', lot: "-5" });
  const csv = await written(ledger, "--csv");
  const [head, row] = [...csvRows(csv)];
  expect(head?.cells).toContain("mass (g)");
  expect(csv.split("\r\n")[1]).toMatch(/^2026-03-02T09:00:\d\d\.000Z,window bench,piece:1,'=1\+1,/);
  expect(row?.cells.slice(3, 9)).toEqual([
    "=1+1",
    '@cmd, "quoted"\nsecond line',
    "ag-925",
    "-5",
    "counter 2",
    "31.1003",
  ]);
  expect(csv).not.toMatch(/(^|,)"?[=+\-@]/m);
});

test("whatever text is written as CSV is read back, and never begins like a formula", () => {
  fc.assert(
    fc.property(fc.array(fc.string(), { minLength: 2, maxLength: 5 }), (cells) => {
      const plain = cells.map((cell) => cell.replace(/[\r\n\t]/g, " ").replace(/^'(\s*[=+\-@])/, "$1"));
      const [first] = [...csvRows(csvLine(["x", ...plain]))];
      expect(first?.cells).toEqual(["x", ...plain]);
      for (const cell of plain) expect(csvCell(cell)).not.toMatch(/^"?\s*[=+\-@]/);
    }),
    // Found by chance: other separators in a cell outnumbered the commas of the row.
    { examples: [[["", ";;;"]], [["\u2028", "a;b;c;d"]]], numRuns: longRun(1000) },
  );
});

test("every exported entry satisfies the published JSON Schema, checked by another library", async () => {
  const ledger = await testLedger();
  for (let i = 0; i < 40; i += 1) await weigh(ledger, `piece:${i}`);
  const lines = (await written(ledger, "--json")).trimEnd().split("\n");
  const schema = JSON.parse(await written(ledger, "--schema"));
  const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
  for (const line of lines)
    expect(validate(JSON.parse(line)), JSON.stringify(validate.errors?.[0])).toBe(true);
  expect(validate({ ...JSON.parse(lines[3] ?? ""), seq: "4" })).toBe(false);
  expect(lines).toHaveLength((await ledger.head())?.seq ?? 0);
});

test("one record in a file of its own is good anywhere, shows nothing of its neighbours, and betrays any change", async () => {
  const said = spoken();
  const ledger = await testLedger();
  for (let i = 0; i < 60; i += 1)
    await weigh(ledger, `piece:${i}`, { ticket: `H-${i}`, description: `secret ${i}` });
  const late = await ledger.append("note", "piece:7", { text: "seen again" });
  await ledger.checkpoint();
  const text = await written(ledger, "--record", "piece:7");
  const file = join(testFolder(), "record.json");
  writeFileSync(file, text);
  expect(await verify([file, "--key", ledger.key?.keyId ?? ""])).toBe(0);
  expect(said()).toMatch(/4 entries about piece:7 are good/);
  expect(text).not.toContain("secret 8");
  expect(text.length).toBeLessThan(60_000);
  expect(late.seq).toBeGreaterThan(180);

  const changes: [string, (record: RecordFile) => void][] = [
    ["an entry", (record) => Object.assign(record.entries[0]?.body as object, { ticket: "H-8" })],
    ["an entry taken from elsewhere", (record) => Object.assign(record.entries[1] ?? {}, { seq: 9 })],
    ["the way up the tree", (record) => record.proofs[0]?.path.splice(2, 1)],
    ["the place in the tree", (record) => Object.assign(record.proofs[0] ?? {}, { index: 12 })],
    [
      "the root",
      (record) => Object.assign(record, { checkpoint: record.checkpoint.replace(/\n\d+\n/, "\n7\n") }),
    ],
    [
      "the statement",
      (record) => Object.assign(record, { statement: record.statement.replace("VALID", "OPEN") }),
    ],
    ["how it stands", (record) => Object.assign(record, { state: "OPEN" })],
    ["the key", (record) => Object.assign(record, { key: "AAAA" })],
    ["an entry and its proof left out", (record) => [record.entries.pop(), record.proofs.pop()]],
    ["the first entry left out", (record) => [record.entries.shift(), record.proofs.shift()]],
  ];
  for (const [what, change] of changes) {
    const record = JSON.parse(text) as RecordFile;
    change(record);
    writeFileSync(file, JSON.stringify(record));
    expect(await verify([file]), what).toBe(1);
    expect(said()).toMatch(/not good/);
  }
  writeFileSync(file, text);
  expect(await verify([file, "--key", "0".repeat(64)])).toBe(1);
  expect(await verify([file]), "who signed is known from the file alone").toBe(1);
});

test("a void record says so in its first line, and cannot be shown without the entry that made it void", async () => {
  const said = spoken();
  const ledger = await testLedger();
  const one = await weigh(ledger, "piece:1");
  const file = join(testFolder(), "record.json");
  writeFileSync(file, await written(ledger, "--record", "piece:1"));
  const key = ["--key", ledger.key?.keyId ?? ""];
  expect(await verify([file, ...key])).toBe(0);
  expect(said()).toMatch(/^VALID/);
  await ledger.append("voiding", "piece:1", { entry: one.id, reason: "bubble under the rim" });
  const text = await written(ledger, "--record", "piece:1");
  expect(text.split("\n")[0]).toContain('"VOID"');
  writeFileSync(file, text);
  expect(await verify([file, ...key])).toBe(0);
  expect(said()).toMatch(/^VOID/);
  const record = JSON.parse(text) as RecordFile;
  for (const state of ["VOID", "VALID"] as const) {
    const shown = {
      ...record,
      state,
      entries: record.entries.slice(0, -1),
      proofs: record.proofs.slice(0, -1),
    };
    writeFileSync(file, JSON.stringify(shown));
    expect(await verify([file, ...key]), state).toBe(1);
  }
});

test("taking a record out writes nothing, from the command line and while a bench is running", async () => {
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  const before = await ledger.head();
  await ledger.recordFile("piece:1");
  await written(ledger, "--record", "piece:1");
  expect(await ledger.head()).toEqual(before);
});

test("a record of the first versions is good once it is taken out anew, and the old form of file is not", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(join(import.meta.dirname, "old", "schema-1.sqlite"), file);
  const ledger = await testLedger({ file });
  const out = join(testFolder(), "record.json");
  writeFileSync(out, await written(ledger, "--record", "piece:1"));
  const key = ["--key", ledger.key?.keyId ?? ""];
  const said = spoken();
  expect(await verify([out, ...key])).toBe(0);
  expect(said()).toMatch(/^VOID/);
  writeFileSync(out, JSON.stringify({ format: "underhook record, version 1", entries: [] }));
  expect(await verify([out, ...key])).toBe(1);
});

test("an export asks for what it can do, and does not overwrite", async () => {
  const said = spoken();
  const ledger = await testLedger();
  await weigh(ledger, "piece:1");
  expect(await exportRun([])).toBe(2);
  expect(said()).toMatch(/--csv/);
  const out = join(testFolder(), "out");
  writeFileSync(out, "mine");
  expect(await exportRun(["--csv", "--out", out, "--ledger", ledger.place])).toBe(2);
  expect(said()).toMatch(/never overwrites/);
  expect(await exportRun(["--record", "piece:none", "--ledger", ledger.place])).toBe(2);
  expect(said()).toMatch(/piece:none/);
});
