import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { copyNames } from "../../../server/ledger/customer-names.ts";
import type { Entry } from "../../../server/ledger/entry.ts";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { codesIn } from "../page-fields.ts";
import { wordsOfPdf } from "../reports/pdf-text.ts";
import { host, recorded, textOf } from "../web/recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

// invented
const name = "Wilhelmine Quast";
const piece = { id: "r1", ticket: "31", dry: "31.70", immersed: "28.14" };

/** Files beside the ledger, and the ledger with its log, that hold these bytes. */
function filesWith(text: string): string[] {
  const folder = dirname(at.file);
  return readdirSync(folder)
    .filter((file) => statSync(join(folder, file)).isFile())
    .filter((file) => readFileSync(join(folder, file)).includes(text));
}

/** What an entry holds of who brought a piece or a lot. */
const whoIn = (entry: Entry | undefined) => {
  const { customer, from } = Object(entry?.body) as { customer?: string; from?: string };
  return customer ?? from;
};

const found = async (q: string) => {
  const { body } = await at.app.inject({ url: `/records?q=${encodeURIComponent(q)}`, headers: { host } });
  return body.includes("/records/r1");
};

const erase = async (fields: Record<string, string> = {}) => {
  const reference = at.ledger.names?.all.find((one) => one.name === name)?.reference ?? "";
  return at.post("/settings/names", {
    reference,
    q: "Quast",
    by: "KR",
    reason: "she asked for it",
    ...fields,
  });
};

test("a customer's name stands beside the ledger and its hash in it; record, list, search and report tell the name", async () => {
  await recorded(at, { ...piece, customer: name });
  await at.post("/records/r1/amendments", { customer: "Ottilie Quast", by: "KR", reason: "her sister" });
  await at.post("/records/r1/amendments", { customer: name, by: "KR", reason: "no, she herself" });
  const [opened] = await at.ledger.entriesOf("r1");
  expect(opened?.body).toMatchObject({ customer: expect.stringMatching(/^name:[0-9a-f]{64}$/) });
  expect(filesWith("Quast")).toEqual(["customer-names.json"]);
  expect(statSync(join(dirname(at.file), "customer-names.json")).mode & 0o077).toBe(0);
  const page = await textOf(at, "/records/r1");
  expect(page).toContain(`Brought by ${name}`);
  expect(page).toContain("Ottilie Quast");
  expect(await textOf(at, "/records")).toContain(name);
  expect([await found("quast"), await found("wilh 31"), await found("wilh 99")]).toEqual([true, true, false]);
  const issued = await at.post("/records/r1/reports", { language: "de" });
  expect(await textOf(at, String(issued.headers.location))).toContain(name);
  expect((await at.ledger.verify()).good && (await at.ledger.verifyList()).good).toBe(true);
  // one name has one reference, also where another entry names it
  const lot = await openedLot(at, { from: name, gross: "12.90", count: "1" });
  const [first] = await at.ledger.entriesOf(lot.replace("/lots/", ""));
  expect(whoIn(first)).toBe(whoIn(opened));
});

test("erased, the name is in no file any more, and the ledger stays as it was and verifiable", async () => {
  await recorded(at, { ...piece, customer: name });
  const before = await at.ledger.entriesOf("r1");
  for (const [fields, code] of [
    [{ by: "" }, "settlement.by-missing"],
    [{ reason: "" }, "settlement.reason-missing"],
    [{ reference: `name:${"0".repeat(64)}` }, "names.unknown"],
  ] as const) {
    const refused = await erase(fields);
    expect([refused.statusCode, codesIn(refused.body).includes(code)]).toEqual([422, true]);
  }
  expect(await textOf(at, "/settings/names?q=quast")).toContain(name);
  expect((await erase()).statusCode).toBe(303);
  expect(filesWith("Quast")).toEqual([]);
  expect(await at.ledger.entriesOf("r1")).toEqual(before);
  expect((await at.ledger.verify()).good && (await at.ledger.verifyList()).good).toBe(true);
  for (const url of ["/records/r1", "/records"])
    expect(await textOf(at, url)).toContain("(name erased or kept elsewhere)");
  expect(await found("quast")).toBe(false);
  const [erased] = await at.ledger.entries({ kind: "name-erased" });
  expect(erased?.body).toMatchObject({ by: "KR", reason: "she asked for it" });
  expect(await textOf(at, "/settings/names")).toContain("she asked for it");
  // the same name again is another reference: nothing tells that it is the one that was erased
  await recorded(at, { id: "r2", dry: "12.90", immersed: "11.93", customer: name });
  const [again] = await at.ledger.entriesOf("r2");
  expect(whoIn(again)).not.toBe(whoIn(before[0]));
});

test("a lot's paper names the seller as long as the name is kept; a form sent twice is done once", async () => {
  const lot = await openedLot(at, { from: name, gross: "12.90", count: "1" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weighed(at, lot, "31", "12.90", "11.932");
  await at.post(`${lot}/payout`, {
    ...{ metal: "gold", price: "60", currency: "EUR", per: "g", source: "harbour board" },
    ...{ at: "2026-03-02 09:30", rate: "100", rounding: "down" },
  });
  await at.post(`${lot}/closing`, { by: "KR" });
  const printed = async (language: string) => {
    await at.post(`${lot}/prints`, { language });
    const entries = await at.ledger.entriesOf(lot.replace("/lots/", ""));
    const print = entries.findLast(({ kind }) => kind === "settlement-printed");
    return wordsOfPdf(
      (await at.app.inject({ url: `${lot}/prints/${print?.id}`, headers: { host } })).rawPayload,
    );
  };
  expect(await printed("en")).toContain(name);
  await erase();
  expect(await printed("de")).not.toContain("Quast");
  const twice = {
    ticket: "41",
    description: "ring",
    method: "hung",
    customer: name,
    key: "r9",
    version: "0",
  };
  for (const _ of [1, 2]) expect((await at.post("/bench/piece", twice)).statusCode).toBe(303);
  expect(await at.ledger.entriesOf("r9")).toHaveLength(1);
});

test("a ledger from before names were kept apart is good, and tells the names that stand in it", async () => {
  await at.close();
  const file = newLedgerFile();
  at = await buildTestBench(file);
  // as an earlier version wrote it: past the names
  Object.defineProperty(at.ledger.names, "keptApart", {
    value: async (happened: readonly object[]) => happened,
  });
  await recorded(at, { ...piece, customer: name });
  await at.close();
  at = await buildTestBench(file);
  expect((await at.ledger.entriesOf("r1"))[0]?.body).toMatchObject({ customer: name });
  expect((await at.ledger.verify()).good && (await at.ledger.verifyList()).good).toBe(true);
  expect(await textOf(at, "/records/r1")).toContain(name);
  expect(await found("quast")).toBe(true);
});

test("a backup takes the names along as they are, and a ledger restored from it does not bring back what was erased since", async () => {
  await recorded(at, { ...piece, customer: name });
  const copy = newLedgerFile();
  await copyNames(at.file, copy, { over: true });
  const names = join(dirname(copy), "customer-names.json");
  expect(readFileSync(names, "utf8")).toContain(name);
  await erase();
  await copyNames(copy, at.file, { over: false });
  expect(filesWith("Quast")).toEqual([]);
  await copyNames(at.file, copy, { over: true });
  expect(readFileSync(names, "utf8")).not.toContain("Quast");
});
