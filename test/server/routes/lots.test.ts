import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

async function openLot(fields: Record<string, string> = {}): Promise<string> {
  const answer = await at.post("/lots", {
    name: "Lot 7",
    gross: "20,05",
    grossUnit: "g",
    count: "2",
    ...fields,
  });
  return answer.headers.location ?? "";
}

async function weigh(lot: string, ticket: string, dry: string, immersed: string, claim = "au-585") {
  await at.post(`${lot}/pieces`, { ticket, claim, step: at.bench.nextPiece });
  await at.post(`${lot}/pieces`, { typed: dry, role: "dry", unit: "g", step: `${at.bench.piece?.id}-0` });
  return at.post(`${lot}/pieces`, {
    typed: immersed,
    role: "immersed",
    unit: "g",
    step: `${at.bench.piece?.id}-1`,
  });
}

test("a lot goes from ticket to ticket: two readings a piece, and each record is written by itself", async () => {
  const lot = await openLot();
  expect(await textOf(at, lot)).toContain("Measure the water");
  await at.post(`${lot}/pieces`, { celsius: "21,4" });
  expect(await textOf(at, lot)).toContain("Scan the next ticket");
  // invented: 12.90 g and 7.15 g of about 13.3 g/cm³
  await weigh(lot, "31", "12,90", "11.932");
  await weigh(lot, "32", "7,15", "6.614");
  const text = await textOf(at, lot);
  expect(text).toContain("Scan the next ticket");
  expect(text).toContain("2 of 2 counted");
  expect(text).toMatch(/Gross mass of the lot 20.05 g/);
  expect(text).toMatch(/agree within 0.0\d+ g/);
  expect(text).toMatch(/Fine mass [\d.]+ to [\d.]+ g gold/);
  const { records } = await at.ledger.records({ filters: { lot: lot.replace("/lots/", "") } });
  expect(records.map(({ ticket }) => ticket)).toEqual(["32", "31"]);
  expect(await textOf(at, "/lots")).toMatch(/Lot 7 .* 2 20.05 g open/);
});

test("a ticket that was weighed already is refused, and what was typed stays", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  const answer = await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585", step: at.bench.nextPiece });
  expect(answer.statusCode).toBe(422);
  expect(wordsOf(answer.body)).toContain("Ticket 31 was weighed in this lot already (12.9 g)");
  expect(answer.body).toContain('value="31"');
});

test("a brass piece lands on the tray of those that disagree and brings no fine mass", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  // 8.5 g/cm³, brass
  await weigh(lot, "40", "10.00", "8.826");
  const text = await textOf(at, lot);
  expect(text).toMatch(/≠ disagrees 1 10\.00\d* g 40/);
  expect(text).toContain("Fine mass none yet");
});

test("a piece of other work on the bench is named and left alone", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post("/bench/piece", { ticket: "A-9", description: "", method: "hung", claim: "", key: "other" });
  expect(await textOf(at, lot)).toContain("Piece A-9 of other work is on the bench");
  const answer = await at.post(`${lot}/pieces`, { typed: "3", role: "dry", unit: "g", step: "x" });
  expect(answer.statusCode).toBe(422);
  expect(at.bench.piece?.captures).toHaveLength(0);
});

test("the same reading sent twice stores once", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585", step: at.bench.nextPiece });
  const form = { typed: "12.90", role: "dry", unit: "g", step: `${at.bench.piece?.id}-0` };
  await at.post(`${lot}/pieces`, form);
  await at.post(`${lot}/pieces`, form);
  expect(at.bench.piece?.captures).toHaveLength(1);
});

test("a price without its source is refused; with it the worksheet shows both ends, units and terms", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  const price = {
    metal: "gold",
    price: "100",
    currency: "eur",
    per: "ozt",
    source: "",
    at: "2026-03-02 09:30",
    rate: "92",
    fee: "1.50",
    rounding: "down",
  };
  const refused = await at.post(`${lot}/payout`, price);
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain("A price without a source settles nothing");
  expect((await at.post(`${lot}/payout`, { ...price, source: "harbour board" })).statusCode).toBe(303);
  const text = await textOf(at, `${lot}/payout`);
  expect(text).toContain("100 EUR per troy ounce");
  expect(text).toContain("harbour board, as of 2026-03-02 09:30; locked");
  expect(text).toContain("rounded down, to the buyer");
  const [, low, high] = /density ([\d.]+) g = [\d.]+ ozt ([\d.]+) g = [\d.]+ ozt/.exec(text) ?? [];
  const [, pay] = /ozt ([\d.]+) EUR [\d.]+ EUR/.exec(text) ?? [];
  // fine g / 31.1034768 × 100 × 0.92, rounded down; shown fine mass has two decimals, so within 3 cents
  expect(Number(high)).toBeGreaterThan(Number(low));
  expect(Math.abs(Number(pay) - (Number(low) / 31.1034768) * 92)).toBeLessThan(0.03);
});

test("a lot nobody opened is refused", async () => {
  expect((await at.app.inject({ url: "/lots/lot-none", headers: { host } })).statusCode).toBe(404);
});
