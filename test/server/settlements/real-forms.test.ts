import { randomBytes } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { BodyOf } from "../../../server/ledger/kinds.ts";
import { newToken } from "../../../server/ledger/tokens.ts";
import { mixtureDensity } from "../../../server/metals/mixture.ts";
import type { Statement } from "../../../server/weighing/statement-shape.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { codesIn } from "../page-fields.ts";
import { host, textOf, wordsOf } from "../web/recorded.ts";

/*
 * What went wrong once with real forms, a test each: every one of them walks the pages' own forms from the ticket to the
 * sum. Masses, prices and names are invented; sums are worked by hand beside each.
 */

let at: TestBench;
let lot: string;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

async function open(fields: Record<string, string>) {
  lot = await openedLot(at, fields);
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
}
const lock = (fields: Record<string, string> = {}) =>
  at.post(`${lot}/payout`, {
    ...{ metal: "gold", price: "100", currency: "EUR", per: "g", source: "harbour board" },
    ...{ at: "2026-03-02 09:30", rate: "100", rounding: "down", ...fields },
  });
const say = (fields: Record<string, string>) => at.post(`${lot}/terms`, { by: "KR", ...fields });
const record = async (ticket: string) =>
  (await at.ledger.records({ filters: { ticket } })).records[0]?.subject ?? "";
const assay = async (ticket: string, metal: string, permille: string, reason = "") =>
  at.post(`/records/${await record(ticket)}/laboratory`, {
    ...{ metal, permille, laboratory: "an invented laboratory", report: "L-1", method: "cupellation" },
    ...{ date: "2024-03-28", reason },
  });
const close = (fields: Record<string, string> = {}) => at.post(`${lot}/closing`, { by: "KR", ...fields });
const closed = async (): Promise<BodyOf<"lot-closed">> => {
  const entries = await at.ledger.entriesOf(lot.replace("/lots/", ""));
  const last = entries.findLast((entry) => entry.kind === "lot-closed");
  if (last?.kind !== "lot-closed") throw new Error("The lot is not closed.");
  return last.body;
};
const paid = async () => (await closed()).settlement?.totals.map(({ paid }) => paid);
const leftOut = async () => (await closed()).settlement?.left_out.map(({ ticket, why }) => [ticket, why]);

/** What a laboratory system reads of the lot. */
async function overApi() {
  const { token, tokenHash } = newToken(randomBytes(32));
  await at.ledger.append("token-issued", "tokens", { name: "test", tokenHash, scopes: ["lots:read"] });
  const headers = { host, authorization: `Bearer ${token}` };
  return (await at.app.inject({ url: `/api${lot}`, headers })).json();
}

test.each([
  ["stones first", [{ deducted: "5.00" }, { permille: "750", saidBy: "stamp" }]],
  ["the fineness first", [{ permille: "750", saidBy: "stamp" }, { deducted: "5.00" }]],
])("%s: (20.00 − 5.00) g × 750 ‰ × 100 is paid, and nothing that was said is lost", async (_, said) => {
  await open({ gross: "20.00", count: "1" });
  await weighed(at, lot, "31", "20.00", "18.72", "au-750");
  await lock();
  for (const one of said) expect((await say({ ticket: "31", ...one })).statusCode).toBe(303);
  expect((await close()).statusCode).toBe(303);
  expect(await paid()).toEqual(["1125.00"]);
});

test("gold and silver of one report are both paid, and a later stamp does not stand before the laboratory", async () => {
  await open({ gross: "12.90", count: "1" });
  await weighed(at, lot, "31", "12.90", "11.932");
  await lock({ price: "60" });
  await lock({ metal: "silver", price: "1.10", rate: "90" });
  await assay("31", "gold", "585.2");
  await assay("31", "silver", "120");
  await say({ ticket: "31", permille: "580", saidBy: "stamp" });
  await close();
  // 12.90 × 585.2 ‰ × 60 = 452.9448; 12.90 × 120 ‰ × 1.10 × 90 % = 1.53252
  expect(await paid()).toEqual(["454.47"]);
  // the closing counts what the laboratory found, in both metals
  const { fine_g } = await closed();
  expect(fine_g).toEqual({ gold: { low: "7.55", high: "7.55" }, silver: { low: "1.55", high: "1.55" } });
  const text = await textOf(at, lot);
  expect(text).toMatch(/7\.55 to 7\.55 g gold; 1\.55 to 1\.55 g silver/);
});

test("what a magnet, a customer's 999 or a second weighing speak against is not paid, and is listed with why", async () => {
  await open({ gross: "42.80", count: "4" });
  for (const ticket of ["31", "32", "33"]) await weighed(at, lot, ticket, "12.90", "11.932");
  await weighed(at, lot, "34", "4.10", "3.793");
  await lock({ price: "60" });
  // a strong pull where no metal of this density is pulled: one of the two is wrong
  const magnet = await at.post(`/records/${await record("31")}/evidence`, {
    ...{ kind: "magnet", "magnet-shows": "strong" },
  });
  expect(magnet.statusCode).toBe(303);
  await say({ ticket: "32", permille: "999", saidBy: "customer" });
  await at.post(`${lot}/trust`, {
    ...{ "trust-1": "customer", "trust-2": "laboratory", "trust-3": "melt", "trust-4": "density" },
    ...{ "trust-5": "stamp", by: "KR", reason: "agreed with the seller" },
  });
  await at.post(`${lot}/again`, { again: "33", againTyped: "11.90", unit: "g" });
  const asked = await close();
  expect(codesIn(asked.body)).toContain("lot.closing-asks");
  const answers = {
    "answer-lot.asks.flagged": "33 dried twice",
    "answer-lot.asks.left-out": "told the seller",
  };
  expect((await close(answers)).statusCode).toBe(303);
  expect(await leftOut()).toEqual([
    ["31", "tests-against"],
    ["32", "contradicted"],
    ["33", "mass-changed"],
  ]);
  const [line, ...more] = (await closed()).settlement?.lines ?? [];
  expect([line?.pieces.map(({ ticket }) => ticket), more]).toEqual([["34"], []]);
  const page = await textOf(at, `${lot}/payout`);
  expect(page).toMatch(
    /By its records the lot holds [\d.]+ to [\d.]+ g of fine gold; [\d.]+ to [\d.]+ g are settled/,
  );
});

test("a fee above the pay is owed and asked about, not shown as nothing", async () => {
  await open({ gross: "20.00", count: "1" });
  await weighed(at, lot, "31", "20.00", "18.50");
  await lock({ price: "80.1", fee: "5000" });
  await say({ ticket: "31", permille: "585", saidBy: "laboratory" });
  const asked = await close();
  expect([asked.statusCode, codesIn(asked.body).includes("lot.closing-asks")]).toEqual([422, true]);
  // 20.00 × 585 ‰ × 80.1 = 937.17
  await close({ "answer-lot.asks.fee": "the seller knows" });
  expect(await paid()).toEqual(["-4062.83"]);
});

test("a lot that is short is asked about before it is closed; what it comes to is shown before and after", async () => {
  await open({ gross: "77.24", count: "1" });
  await weighed(at, lot, "31", "20.00", "18.50");
  const short = await close();
  expect(short.statusCode).toBe(422);
  expect(short.body).toContain('name="answer-lot.asks.missing"');
  expect(wordsOf(short.body)).toContain("57.24 g");
  expect((await close({ "answer-lot.asks.missing": "the seller took 57 g back" })).statusCode).toBe(303);
  const text = await textOf(at, lot);
  expect(text).toContain("57.24 g");
  expect(text).toContain("the seller took 57 g back");
});

test("a flag that was cleared comes back with the next weighing, and nobody sets what the record says", async () => {
  await open({ gross: "12.90", count: "1" });
  await weighed(at, lot, "31", "12.90", "11.932");
  const again = (mass: string) => at.post(`${lot}/again`, { again: "31", againTyped: mass, unit: "g" });
  const flags = async () => /Flags|flag/.test(await textOf(at, lot)) && (await textOf(at, lot));
  await again("13.10");
  expect(await flags()).toContain("water inside");
  const clear = { flagTicket: "31", flag: "water inside", action: "clear", reason: "dried", by: "KR" };
  expect((await at.post(`${lot}/flags`, clear)).statusCode).toBe(303);
  await again("13.25");
  const asked = await close();
  expect(asked.body).toContain('name="answer-lot.asks.flagged"');
  const set = await at.post(`${lot}/flags`, { flagTicket: "31", flag: "voided", reason: "slip" });
  expect([set.statusCode, codesIn(set.body)]).toEqual([422, ["lot.flag-of-the-record"]]);
});

test("one piece weighed in grams and again in carats is told as the same", async () => {
  await open({ gross: "10.00", count: "2" });
  await weighed(at, lot, "31", "10.00", "9.25");
  await weighed(at, lot, "32", "50.00", "46.25", "au-585", "ct");
  expect(await textOf(at, lot)).toMatch(/same mass/i);
});

test("10,050 is asked about by every form that takes a mass or a price, with both things it can mean", async () => {
  await open({ gross: "20.05", count: "2" });
  await weighed(at, lot, "31", "10.00", "9.25");
  await lock();
  const value = "10,050";
  await at.post(`${lot}/pieces`, { ticket: "32", claim: "au-585", step: at.bench.nextPiece });
  const forms: [path: string, fields: Record<string, string>][] = [
    ["/lots", { name: "Lot 8", gross: value, grossUnit: "g" }],
    [`${lot}/pieces`, { typed: value, role: "dry", unit: "g", step: "x" }],
    ["/bench/typed-readings", { role: "dry", reading: value, unit: "g" }],
    [`${lot}/again`, { again: "31", againTyped: value, unit: "g" }],
    [`${lot}/terms`, { ticket: "31", deducted: value, by: "KR" }],
    [
      `${lot}/payout`,
      { price: value, currency: "EUR", per: "g", source: "x", at: "2026-03-02 09:30", rate: "95" },
    ],
  ];
  const told = await Promise.all(
    forms.map(async ([path, fields]) => {
      const answer = await at.post(path, fields);
      const words = wordsOf(answer.body);
      return [path, answer.statusCode, words.includes("10.050") && words.includes("10050")];
    }),
  );
  expect(told).toEqual(forms.map(([path]) => [path, 422, true]));
});

test("records and lots give one mass over the API, and the CSV the same", async () => {
  await open({ gross: "10.03", count: "1" });
  await weighed(at, lot, "31", "10.03", "9.28");
  const list = await at.ledger.records({ filters: { ticket: "31" } });
  const [one] = list.records;
  const { pieces } = await overApi();
  expect(pieces).toMatchObject([{ mass_g: one?.mass_g, dry_g: one?.dry_g }]);
  expect(one?.dry_g).toBe(10.03);
  const csv = await at.app.inject({ url: `${lot}/records.csv`, headers: { host } });
  expect(csv.body).toContain(`,${one?.mass_g},`);
});

test("results of laboratories on other pieces of a claim narrow the record, and the payout only once that is agreed", async () => {
  const gPerCm3 = mixtureDensity({ Au: 0.585, Ag: 0.2, Cu: 0.215 }).correctedGPerCm3;
  const wet = (100 - (100 * 0.9979) / gPerCm3).toFixed(2);
  await open({ gross: "600.00", count: "6" });
  for (const ticket of ["31", "32", "33", "34", "35"]) {
    await weighed(at, lot, ticket, "100.00", wet);
    await assay(ticket, "gold", "585.2");
  }
  await open({ name: "Lot 8", gross: "100.00", count: "1" });
  await weighed(at, lot, "36", "100.00", wet);
  await lock();
  const result = (await at.ledger.entriesOf(await record("36"))).find(({ kind }) => kind === "result");
  const { statement } = result!.body as { statement: Statement };
  const fineness = statement.fineness!;
  expect(fineness.laboratory_results).toMatchObject({ narrows: true });
  const [free] = (await overApi()).settlement.lines;
  expect(free.rests_on).toEqual({ source: "density", entries: [], not_narrowed: ["36"] });
  // paid by the low end over everything that 585 allows, far below what the record says of such pieces
  expect(Number(free.permille.low)).toBeLessThan((fineness.permille[0] ?? 0) - 50);
  expect(await textOf(at, `${lot}/payout`)).toContain("36 over everything their claim allows");
  const agreed = await at.post(`${lot}/trust`, {
    ...{ "trust-1": "laboratory", "trust-2": "melt", "trust-3": "density", "trust-4": "stamp" },
    ...{ "trust-5": "customer", narrowed: "yes", by: "KR", reason: "all of one maker" },
  });
  expect(agreed.statusCode).toBe(303);
  const [narrowed] = (await overApi()).settlement.lines;
  expect(narrowed.rests_on).toEqual({ source: "density", entries: [], like_assayed: ["36"] });
  expect(Number(narrowed.fine_g.low)).toBeCloseTo(fineness.fine_g[0], 5);
  // what is agreed stands in the form, so that sending it again changes nothing
  expect((await at.app.inject({ url: `${lot}/payout`, headers: { host } })).body).toMatch(
    /name="narrowed" value="yes" checked/,
  );
});
