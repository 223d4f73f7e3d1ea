import { createHash } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { codesIn, formOn } from "../page-fields.ts";
import { wordsOfPdf } from "../reports/pdf-text.ts";
import { host, textOf, wordsOf } from "../web/recorded.ts";

let at: TestBench;
let lot: string;
beforeEach(async () => {
  at = await buildTestBench();
  lot = await openedLot(at, { gross: "12.90", count: "1" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weighed(at, lot, "31", "12.90", "11.932");
});
afterEach(() => at.close());

// invented: 60 EUR a gram, all of it paid
const price = {
  metal: "gold",
  price: "60",
  currency: "EUR",
  per: "g",
  source: "harbour board",
  at: "2026-03-02 09:30",
  rate: "100",
  rounding: "down",
};
const lock = (fields: Record<string, string> = {}) => at.post(`${lot}/payout`, { ...price, ...fields });
const laboratory = async (permille: string, fields: Record<string, string> = {}) => {
  const [record] = (await at.ledger.records({})).records;
  return at.post(`/records/${record?.subject}/laboratory`, {
    metal: "gold",
    permille,
    laboratory: "an invented laboratory",
    report: "L-1",
    method: "cupellation",
    date: "2024-03-28",
    ...fields,
  });
};
const id = () => lot.replace("/lots/", "");
const closings = async () =>
  (await at.ledger.entriesOf(id())).flatMap((entry) => (entry.kind === "lot-closed" ? [entry.body] : []));

test("a lot's life: promised, closed and frozen, opened again by two, corrected, closed anew; old stands beside new", async () => {
  await lock();
  await laboratory("580");
  // 12.90 g × 580 ‰ × 60
  expect((await at.post(`${lot}/closing`, { by: "KR" })).statusCode).toBe(303);
  const [first] = await closings();
  expect(first?.settlement?.totals).toEqual([
    { currency: "EUR", low: "448.92", high: "448.92", paid: "448.92" },
  ]);

  // closed for every command, also for those about its pieces
  const [record] = (await at.ledger.records({})).records;
  for (const refused of [
    await lock({ by: "KR", reason: "the board moved" }),
    await at.post(`${lot}/terms`, { ticket: "31", permille: "999", saidBy: "customer", by: "KR" }),
    await at.post(`${lot}/decisions`, { decided: "31", pays: "no", by: "KR", reason: "-" }),
    await at.post(`${lot}/flags`, { flagTicket: "31", own: "clasp", reason: "magnet" }),
    await at.post(`${lot}/again`, { again: "31", againTyped: "11.90", unit: "g" }),
    await at.post(`${lot}/pieces`, { celsius: "22.0" }),
    await laboratory("585.2", { reason: "second sample" }),
    await at.post(`/records/${record?.subject}/voiding`, { by: "KR", reason: "slip" }),
  ]) {
    expect(refused.statusCode).toBe(422);
    expect(codesIn(refused.body).some((code) => /^lot\.closed/.test(code))).toBe(true);
  }

  const reopen = (fields: Record<string, string>) => at.post(`${lot}/reopening`, fields);
  expect(codesIn((await reopen({ by: "KR", second: "MT" })).body)).toContain("settlement.reason-missing");
  const same = await reopen({ by: "KR", second: "k.r.", reason: "second report" });
  expect(codesIn(same.body)).toContain("settlement.second-same");
  expect(same.body).toContain('value="second report"');
  expect((await reopen({ by: "KR", second: "MT", reason: "second report" })).statusCode).toBe(303);

  expect((await laboratory("585.2", { reason: "second sample" })).statusCode).toBe(303);
  expect((await at.post(`${lot}/closing`, { by: "KR" })).statusCode).toBe(303);
  const [stillFirst, second] = await closings();
  expect(stillFirst).toEqual(first);
  // 12.90 g × 585.2 ‰ × 60 = 452.9448
  expect(second).toMatchObject({ version: 2, settlement: { totals: [{ paid: "452.94" }] } });
  const text = await textOf(at, `${lot}/payout`);
  expect(text).toContain("448.92 EUR");
  expect(text).toContain("452.94 EUR");
  expect(text).toContain("by KR with MT: second report");
});

test.each([
  ["en", /Payout for Lot 7/, /Nothing to exclude/],
  ["de", /Ankaufsabrechnung für Lot 7/, /\b(the|and|piece|paid|weighed|pay|ticket|buyer|seller|report)\b/i],
  ["es", /Liquidación de Lot 7/, /\b(the|and|piece|paid|weighed|pay|ticket|buyer|seller|report)\b/i],
])("the paper in %s is printed, kept, and its SHA-256 is in the ledger", async (language, title, foreign) => {
  await lock();
  await at.post(`${lot}/terms`, {
    ticket: "31",
    deducted: "0,90",
    permille: "585",
    saidBy: "stamp",
    by: "KR",
  });
  await at.post(`${lot}/closing`, { by: "KR" });
  await at.post(`${lot}/prints`, { language });
  const printed = (await at.ledger.entriesOf(id())).findLast((entry) => entry.kind === "settlement-printed");
  expect(printed?.body).toMatchObject({ language });
  const answer = await at.app.inject({ url: `${lot}/prints/${printed?.id}`, headers: { host } });
  expect(createHash("sha256").update(answer.rawPayload).digest("hex")).toBe(
    printed?.kind === "settlement-printed" && printed.body.pdf,
  );
  const text = wordsOfPdf(answer.rawPayload);
  expect(text).toMatch(title);
  // (12.90 − 0.90) g × 585 ‰ × 60
  expect(text).toMatch(/421[.,]20\s*EUR/);
  expect(text.replaceAll(/harbour board/g, "")).not.toMatch(foreign);
  expect((await at.ledger.verify()).good).toBe(true);
});

test("what a change would come to is shown before it is written, and nothing is written", async () => {
  await lock();
  const head = await at.ledger.head();
  const stated = { ticket: "31", permille: "580", saidBy: "laboratory", by: "KR" };
  const shown = await at.post(`${lot}/terms`, { ...stated, preview: "yes" });
  expect(shown.statusCode).toBe(200);
  expect(wordsOf(shown.body)).toMatch(/To be paid \(EUR\) [\d.]+ EUR 448\.92 EUR/);
  expect(shown.body).toContain('value="580"');
  expect(await at.ledger.head()).toEqual(head);
});

test("a sum that changed since the page of the closing was drawn is not closed", async () => {
  await lock();
  const closing = formOn((await at.app.inject({ url: lot, headers: { host } })).body, `${lot}/closing`);
  await laboratory("580");
  const answer = await at.post(`${lot}/closing`, { ...closing, by: "KR" });
  expect([answer.statusCode, codesIn(answer.body)]).toEqual([422, ["settlement.changed"]]);
});

test.each([
  ["payout", { ...price, price: "61", by: "KR", reason: "the board moved" }],
  ["terms", { ticket: "31", permille: "580", saidBy: "stamp", by: "KR" }],
  ["decisions", { decided: "31", pays: "no", mass: "first", by: "KR", reason: "taken back" }],
  [
    "trust",
    {
      "trust-1": "stamp",
      "trust-2": "laboratory",
      "trust-3": "melt",
      "trust-4": "density",
      "trust-5": "customer",
      by: "KR",
      reason: "agreed",
    },
  ],
  ["reopening", { by: "KR", second: "MT", reason: "second report" }],
])(
  "two browsers racing with %s: the second is refused by name, and what was typed stays",
  async (form, fields) => {
    await lock();
    if (form === "reopening") await at.post(`${lot}/closing`, { by: "KR" });
    const page = (await at.app.inject({ url: `${lot}/payout`, headers: { host } })).body;
    const given = formOn(page, `${lot}/${form}`);
    const sent = { ...given, ...fields };
    expect((await at.post(`${lot}/${form}`, sent)).statusCode).toBe(303);
    const head = await at.ledger.head();
    const other = await at.post(`${lot}/${form}`, { ...sent, by: "MT", second: "PL" });
    expect(other.statusCode).toBe(422);
    expect(codesIn(other.body)).toContain("lot.stale");
    expect(wordsOf(other.body) + other.body).toMatch(/value="MT"|: MT/);
    expect(await at.ledger.head()).toEqual(head);
  },
);

test("a price of tomorrow, of no such day, and one changed without a word are refused; what was typed stays", async () => {
  const refused = async (fields: Record<string, string>) => {
    const answer = await lock(fields);
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain('value="harbour board"');
    return codesIn(answer.body);
  };
  expect(await refused({ at: "2127-01-01 09:30" })).toContain("price.refused.to-come");
  expect(await refused({ at: "2026-02-30 09:30" })).toContain("price.refused.no-moment");
  expect(await refused({ at: "30.02.2026 09:30" })).toContain("price.refused.no-moment");
  // with points the day stands first
  expect((await lock({ at: "2.3.2026 09:30" })).statusCode).toBe(303);
  expect(await refused({ price: "45" })).toContain("settlement.by-missing");
  expect(await refused({ price: "45", by: "KR" })).toContain("settlement.reason-missing");
  const [price, ...more] = await at.ledger.entries({ kind: "lot-price" });
  expect(price?.body).toMatchObject({ moment: expect.stringMatching(/^2026-03-02T/) });
  expect(more).toEqual([]);
});
