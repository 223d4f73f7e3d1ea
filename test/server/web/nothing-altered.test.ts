import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { run as verify } from "../../../server/cli/verify.ts";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";
import { spoken, testFolder } from "../ledger/bench-ledger.ts";
import { tamper } from "../ledger/tampering.ts";
import { codesIn } from "../page-fields.ts";
import { telephoneJpeg } from "../photos/pictures.ts";
import { host, recorded, sendPhoto, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  // 31.70 typed for the 31.10 that the scale showed
  await recorded(at, { id: "m7", ticket: "M-7", claim: "ag-925", dry: "31.70", immersed: "28.14" });
});
afterEach(() => at.close());

const get = (url: string) => at.app.inject({ url, headers: { host } });
const entries = () => at.ledger.entriesOf("m7");
const readingOf = async (role: string) =>
  (await entries()).find((entry) => entry.kind === "capture" && entry.body.what === role)?.id ?? "";
const issue = async (step: string) => (await at.post("/records/m7/reports", { step })).headers.location ?? "";
/** A page without the tokens that every load draws anew. */
const bare = async (url: string) => (await get(url)).body.replace(/name="_csrf" value="[^"]+"/g, "");
const amend = (fields: Record<string, string>) =>
  at.post("/records/m7/amendments", {
    by: "KR",
    reason: "7 typed for 1",
    step: "m7-amend",
    ...fields,
  });

test("“just change the 7 to a 1”: an amendment with name and reason; the reading typed first stays struck through, the printed report stays, and the new number refers to it", async () => {
  const printed = await issue("click-1");
  const before = await bare(printed);
  const first = await entries();
  const field = `reading:${await readingOf("dry")}`;
  expect((await get("/records/m7")).body).toContain(`name="${field}"`);

  expect((await amend({ [field]: "31.10", by: "" })).statusCode).toBe(422);
  expect((await amend({ [field]: "31.10", reason: " " })).statusCode).toBe(422);
  expect(wordsOf((await amend({ [field]: "31.1" })).body)).toContain("Right: as many decimals");
  expect(await entries()).toEqual([...first]);

  const form = { [field]: "31.10", version: `${first.length}` };
  expect((await amend(form)).statusCode).toBe(303);
  // the same form of the same page is sent again
  const once = await entries();
  expect((await amend(form)).statusCode).toBe(303);
  expect(await entries()).toEqual(once);
  expect(once.slice(0, first.length)).toEqual(first);

  const record = await get("/records/m7");
  expect(record.body).toContain('<span class="voided">31.70 g</span>');
  const text = wordsOf(record.body);
  expect(text).toContain("voided: 7 typed for 1");
  expect(text).toContain("dry: 31.70 g → 31.10 g");
  expect(text).toMatch(/dry 31\.10 g/);
  // 31.10 / (31.10 − 28.14) × 0.997904 g/cm³ of water at 21.4 °C (Tanaka 2001), air neglected
  const [, density] = /([\d.]+) ± [\d.]+ g\/cm³/.exec(text) ?? [];
  expect(Number(density)).toBeCloseTo((31.1 / 2.96) * 0.9979, 1);
  expect((await at.ledger.records()).records[0]).toMatchObject({ dry: "31.10 g", amendments: 1 });
  expect(await at.ledger.verifyList()).toMatchObject({ good: true });

  expect(await bare(printed)).toBe(before);
  const anew = await issue("click-2");
  const number = (href: string) => /reports\/([^?]+)/.exec(href)?.[1] ?? "";
  expect(number(anew)).not.toBe(number(printed));
  expect(await textOf(at, anew)).toContain(`Amendment to report ${number(printed)}, which it replaces.`);
  expect(await textOf(at, anew)).toContain("(dry 31.70 g) was declared void: 7 typed for 1.");
});

test("a reading that came from the balance is not put right by anybody's pen", async () => {
  const { id } = await at.ledger.append("capture", "m7", {
    what: "dry",
    reading: { text: "31.70", unit: "g", grams: "31.70" },
    source: "balance",
    settled: { by: "mark", because: "the balance marked it as at rest" },
    lines: [],
  });
  expect((await get("/records/m7")).body).not.toContain(`name="reading:${id}"`);
  const refused = await amend({ [`reading:${id}`]: "31.10" });
  expect(refused.statusCode).toBe(422);
  expect(codesIn(refused.body)).toEqual(["record.amend.not-typed"]);
});

test("a record amended and then voided is voided on its page, in the list and on its report", async () => {
  await amend({ celsius: "20.0" });
  await at.post("/records/m7/voiding", { by: "KR", reason: "bubble" });
  expect(await textOf(at, "/records/m7")).toContain("Voided");
  expect((await at.ledger.records()).records[0]).toMatchObject({ voided: true });
  expect(await textOf(at, await issue("click-1"))).toContain("bubble. It must not be used.");
});

test("the printer jams after the number is issued: the number is taken, printing again says copy 2, and a page sent twice stores once", async () => {
  const first = await issue("m7-print");
  expect(await issue("m7-print")).toBe(first);
  const second = await issue("m7-print-again");
  expect(second).toBe(first.replace("copy=1", "copy=2"));
  const number = /reports\/([^?]+)/.exec(first)?.[1] ?? "";
  expect(await textOf(at, second)).toContain(`Report ${number}, copy 2`);
  expect(await textOf(at, first)).toContain(`Report ${number}, copy 1`);
  await recorded(at, { id: "m8", dry: "12.95", immersed: "11.90" });
  const other = (await at.post("/records/m8/reports", { step: "m8-print" })).headers.location ?? "";
  expect(other).not.toContain(number);
  // the record itself, sent again after it was stored
  const stored = (await at.ledger.head())?.seq;
  await at.post("/bench/piece", { ticket: "m8", method: "hung", claim: "", key: "m8" });
  await at.post("/bench/record", {});
  expect((await at.ledger.head())?.seq).toBe(stored);
});

test("a customer disputes a result of last spring: the record holds readings with their times, water, operator, checks, photo and the hash that was printed", async () => {
  await sendPhoto(at, "/records/m7/photos", telephoneJpeg(), { shows: "front" });
  const report = await textOf(at, await issue("click-1"));
  const hash = /Hash \(SHA-256\) ([0-9a-f]{64})/.exec(report)?.[1] ?? "";
  const record = await get("/records/m7");
  for (const part of ["31.70 g", "28.14 g", "water, distilled, 21.4 °C", hash, "typed", "UTC"])
    expect(wordsOf(record.body)).toContain(part);
  expect(record.body).toMatch(/alt="Photo of M-7: front"/);
  expect(report).toContain("Checks of the equipment");
});

test("“show that you can't alter a reading”: every digit changed behind the bench's back is named by row, and what the bench itself offers only adds", async () => {
  const before = await entries();
  await amend({ [`reading:${await readingOf("dry")}`]: "31.10" });
  await at.post("/records/m7/voiding", { by: "KR", reason: "weighed again" });
  expect((await entries()).slice(0, before.length)).toEqual(before);
  await at.ledger.checkpoint();
  await at.close();
  const said = spoken();
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(at.file, file);
  const key = ["--key", at.ledger.key?.keyId ?? ""];
  expect(await verify([file, ...key])).toBe(0);
  said();
  const [reading] = before.filter(({ kind }) => kind === "capture");
  tamper(file, (rows) =>
    rows.map((row) =>
      row.seq === reading?.seq ? { ...row, body: row.body.replaceAll("31.70", "31.10") } : row,
    ),
  );
  expect(await verify([file, ...key])).toBe(1);
  expect(said()).toMatch(new RegExp(`not good.*[Rr]ow ${reading?.seq}`));
  at = await buildTestBench(newLedgerFile());
});
