import { afterEach, beforeEach, expect, test } from "vitest";
import { message } from "../../../calibration/message.ts";
import { tell } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { codesIn } from "../page-fields.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const openLot = (fields: Record<string, string> = {}) => openedLot(at, fields);
const weigh = (lot: string, ticket: string, dry: string, immersed: string, claim?: string, unit?: string) =>
  weighed(at, lot, ticket, dry, immersed, claim, unit);

test("a lot goes from ticket to ticket: two readings a piece, and each record is written by itself", async () => {
  const lot = await openLot();
  expect(await textOf(at, lot)).toContain("Measure the water");
  await at.post(`${lot}/pieces`, { celsius: "21,4" });
  expect(await textOf(at, lot)).toContain("Scan the next ticket");
  // invented: 12.90 g and 7.15 g of about 13.3 g/cm³
  await weigh(lot, "31", "12,90", "11.932");
  await weigh(lot, "32", "7,15", "6.614");
  const text = await textOf(at, lot);
  expect(text).toContain(tell(message("lots.step.full", { counted: 2 }), "en"));
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
  expect(codesIn(answer.body)).toEqual(["lot.ticket-weighed"]);
  expect(wordsOf(answer.body)).toContain("12.90 g");
  expect(answer.body).toContain('value="31"');
});

test("a brass piece lands on the tray of those that are excluded and brings no fine mass", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  // 8.5 g/cm³, brass
  await weigh(lot, "40", "10.00", "8.826");
  const text = await textOf(at, lot);
  expect(text).toMatch(/≠ excluded 1 10\.00\d* g 40/);
  expect(text).toContain("Fine mass none yet");
});

test("a piece of other work on the bench is named and left alone", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post("/bench/piece", { ticket: "A-9", description: "", method: "hung", claim: "", key: "other" });
  expect(await textOf(at, lot)).toContain("Piece A-9 of other work is on the bench");
  const answer = await at.post(`${lot}/pieces`, { typed: "3", role: "dry", unit: "g", step: "x" });
  expect(answer.statusCode).toBe(422);
  expect(codesIn(answer.body)).toEqual(["lot.item-elsewhere"]);
  expect(at.bench.item?.captures).toHaveLength(0);
});

test("the same reading sent twice stores once", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585", step: at.bench.nextPiece });
  const form = { typed: "12.90", role: "dry", unit: "g", subject: at.bench.about.subject, version: "2" };
  await at.post(`${lot}/pieces`, form);
  await at.post(`${lot}/pieces`, form);
  expect(at.bench.item?.captures).toHaveLength(1);
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
  const [, low, high] = /density ([\d.]+) to ([\d.]+) g = [\d.]+ to [\d.]+ ozt/.exec(text) ?? [];
  const [, pay] = /ozt ([\d.]+) EUR [\d.]+ EUR/.exec(text) ?? [];
  // fine g / 31.1034768 × 100 × 0.92, rounded down; shown fine mass has two decimals, so within 3 cents
  expect(Number(high)).toBeGreaterThan(Number(low));
  expect(Math.abs(Number(pay) - (Number(low) / 31.1034768) * 92)).toBeLessThan(0.03);
});

test("a lot nobody opened is refused", async () => {
  expect((await at.app.inject({ url: "/lots/lot-none", headers: { host } })).statusCode).toBe(404);
});

test("a piece that drank is flagged, the flag is cleared with a reason, and both stay", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  await at.post(`${lot}/again`, { again: "31", againTyped: "13,21", unit: "g" });
  expect(await textOf(at, lot)).toContain(
    tell(message("lot-check.mass-gained", { change_g: { decimal: "0.31" } }), "en"),
  );
  const refused = await at.post(`${lot}/flags`, { flagTicket: "31", flag: "water inside", action: "clear" });
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain("A flag needs a reason");
  await at.post(`${lot}/flags`, {
    flagTicket: "31",
    flag: "water inside",
    action: "clear",
    reason: "dried, 12.90 g again",
  });
  await at.post(`${lot}/flags`, {
    flagTicket: "31",
    own: "magnetic clasp",
    action: "set",
    reason: "held by the magnet",
  });
  const text = await textOf(at, lot);
  expect(text).not.toContain(tell(message("lot-check.mass-gained-remedy"), "en"));
  expect(text).toContain("magnetic clasp (held by the magnet)");
  expect(await at.ledger.entries({ kind: "lot-flag" })).toHaveLength(2);
  const byHand = { flagTicket: "31", flag: "voided", action: "set", reason: "it is not" };
  expect(codesIn((await at.post(`${lot}/flags`, byHand)).body)).toEqual(["lot.flag-of-the-record"]);
  expect(await at.ledger.entries({ kind: "lot-flag" })).toHaveLength(2);
  // It is back on the pan once more, and still heavier: what was cleared is told again.
  await at.post(`${lot}/again`, { again: "31", againTyped: "13,20", unit: "g" });
  expect(await textOf(at, lot)).toContain(tell(message("lot-check.mass-gained-remedy"), "en"));
});

test("a ring weighed in two lots of one day is told in the second, and asked about before that is closed", async () => {
  const morning = await openLot();
  await at.post(`${morning}/pieces`, { celsius: "21.4" });
  await weigh(morning, "M-1", "12.90", "11.932");
  await weigh(morning, "M-2", "17.31", "16.012");
  const afternoon = await openLot({ name: "afternoon" });
  await at.post(`${afternoon}/pieces`, { celsius: "21.4" });
  const told = tell(message("lot-check.same-mass-remedy"), "en");
  await weigh(afternoon, "A-1", "3.07", "2.84");
  expect(await textOf(at, afternoon)).not.toContain(told);
  await weigh(afternoon, "A-2", "12.91", "11.941");
  expect(await textOf(at, afternoon)).toContain(told);
  const asked = await at.post(`${afternoon}/closing`, { by: "TM" });
  const question = { flagged: 1, pieces: 2, tickets: ["A-2"] };
  expect(wordsOf(asked.body)).toContain(tell(message("lot.asks.flagged", question), "en"));
});

test("a closed lot keeps its totals and takes no more pieces", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  await at.post(`${lot}/pieces`, { ticket: "32", claim: "au-585", step: at.bench.nextPiece });
  expect((await at.post(`${lot}/closing`, {})).statusCode).toBe(422);
  await at.post(`${lot}/pieces`, { aside: "yes" });
  // one of the two counted pieces was not weighed: 7.15 g are missing, and that is asked
  const asked = await at.post(`${lot}/closing`, { by: "quay counter", note: "seller in a hurry" });
  expect(asked.statusCode).toBe(422);
  expect(codesIn(asked.body)).toContain("lot.closing-asks");
  expect(asked.body).toContain('value="seller in a hurry"');
  const answered = { by: "quay counter", "answer-lot.asks.missing": "one ring taken back" };
  expect((await at.post(`${lot}/closing`, answered)).statusCode).toBe(303);
  expect((await at.post(`${lot}/closing`, answered)).statusCode).toBe(422);
  const [entry, ...more] = await at.ledger.entries({ kind: "lot-closed" });
  expect(more).toEqual([]);
  expect(entry?.body).toMatchObject({ pieces: 1, sum_g: "12.90", missing_g: "7.15", by: "quay counter" });
  const answer = await at.post(`${lot}/pieces`, { ticket: "33", claim: "", step: at.bench.nextPiece });
  expect(answer.statusCode).toBe(422);
  expect(codesIn(answer.body)).toEqual(["lot.closed"]);
  expect(await textOf(at, "/lots")).toContain("closed 20");
});

test("tickets of a list come by themselves with their claim, and Enter on an empty field takes the next", async () => {
  const from = "list of the quay";
  for (const [ticket, claim] of [
    ["Q-1", "ag-925"],
    ["Q-2", "au-585"],
  ] as const)
    await at.ledger.append("ticket-announced", "tickets", {
      ticket,
      description: "an invented piece",
      claim,
      lot: "Lot 7",
      mass_g: "12.90",
      from,
    });
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  const page = await at.app.inject({ url: lot, headers: { host } });
  expect(page.body).toContain('name="nextTicket" value="Q-1"');
  expect(wordsOf(page.body)).toContain("Of the list 2 are still to come: Q-1, Q-2.");
  await at.post(`${lot}/pieces`, { ticket: "", nextTicket: "Q-1", claim: "", step: at.bench.nextPiece });
  expect(at.bench.item).toMatchObject({ ticket: "Q-1", claim: "ag-925" });
});

test("a stamp or a laboratory stands beside the density, and stones come off the mass", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  await weigh(lot, "32", "7.15", "6.614");
  await at.post(`${lot}/payout`, {
    metal: "gold",
    price: "50",
    currency: "eur",
    per: "g",
    source: "harbour board",
    at: "2026-03-02 09:30",
    rate: "100",
    rounding: "down",
  });
  await at.post(`${lot}/terms`, { ticket: "31", permille: "585", saidBy: "laboratory", by: "KR" });
  await at.post(`${lot}/terms`, { ticket: "32", deducted: "0,15", by: "KR" });
  const left = await textOf(at, `${lot}/payout`);
  expect(left).toMatch(/585 ‰ laboratory; by KR; by density \d+ to \d+ ‰: fits/);
  expect(left).toMatch(/Nothing is paid for .* 32 7\.15 g with parts taken off, its density says nothing/);
  await at.post(`${lot}/terms`, { ticket: "32", permille: "900", saidBy: "stamp", by: "KR" });
  const text = await textOf(at, `${lot}/payout`);
  // (7.15 − 0.15) g × 900 ‰ = 6.30 g, at 50 a gram 315
  expect(text).toMatch(/7\.00 g \(0\.15 g taken off\) 900 ‰ stamp; by KR; [^;]* 6\.3 g 315\.00 EUR/);
  expect(text).toContain(tell(message("payout.rests.with-stones"), "en"));
  expect(await at.ledger.entries({ kind: "lot-terms" })).toHaveLength(3);
});

test("a night in pennyweights: readings keep their unit, the lot counts in grams, and both are told at once", async () => {
  await at.settings.keep({ secondUnit: "dwt" });
  // 12.88 dwt is 20.0306… g; its display steps by 0.01 dwt, so the sums are told to 0.01 g and no finer
  const lot = await openLot({ gross: "12.88", grossUnit: "dwt" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "8.29", "7.67", "au-585", "dwt");
  await weigh(lot, "32", "7.15", "6.614");
  const text = await textOf(at, lot);
  // NIST SP 811 appendix B.8: 1 dwt = 1.555 174 g; 8.29 dwt = 12.892 g and 7.15 g = 4.598 dwt
  expect(text).toContain("8.29 dwt = 12.89 g");
  expect(text).toContain("7.15 g = 4.598 dwt");
  expect(text).toMatch(/Sum of the pieces 20\.04 g = 12\.888 dwt/);
  expect(text).toMatch(/Gross mass of the lot 12\.88 dwt = 20\.03 g/);
  expect(text).toMatch(/Fine mass [\d.]+ to [\d.]+ g gold = [\d.]+ to [\d.]+ dwt/);
  expect(text).toContain("agree within 0.05 g");
  const { records } = await at.ledger.records({ filters: { lot: lot.replace("/lots/", "") } });
  const about = await at.ledger.entriesOf(records[1]?.subject ?? "");
  const dry = about.find(({ kind, body }) => kind === "capture" && "what" in body && body.what === "dry");
  expect(dry?.body).toMatchObject({ reading: { text: "8.29", unit: "dwt", grams: "12.8923911336" } });
  // the form offers the unit of the reading before
  await at.post(`${lot}/pieces`, { ticket: "33", claim: "none", beyond: "yes", step: at.bench.nextPiece });
  const page = await at.app.inject({ url: lot, headers: { host } });
  expect(page.body).toMatch(/<option value="g" selected/);
});

test("an unknown ticket takes the claim of the lot, or is asked about; never the claim of the piece before", async () => {
  const silver = await openLot({ name: "Lot 8", claim: "ag-925" });
  await at.post(`${silver}/pieces`, { celsius: "21.4" });
  await at.post(`${silver}/pieces`, { ticket: "1", claim: "au-585" });
  expect(at.bench.item).toMatchObject({ ticket: "1", claim: "au-585" });
  await at.post(`${silver}/pieces`, { aside: "yes" });
  const page = await at.app.inject({ url: silver, headers: { host } });
  expect(page.body).toMatch(/<option value="ag-925" selected/);
  expect(page.body).not.toMatch(/<option value="au-585" selected/);
  await at.post(`${silver}/pieces`, { ticket: "2" });
  expect(at.bench.item).toMatchObject({ ticket: "2", claim: "ag-925" });
  await at.post(`${silver}/pieces`, { aside: "yes" });

  const mixed = await openLot({ name: "Lot 9" });
  await at.post(`${mixed}/pieces`, { celsius: "21.4" });
  const asked = await at.post(`${mixed}/pieces`, { ticket: "3", claim: "" });
  expect([asked.statusCode, codesIn(asked.body)]).toEqual([422, ["lot.claim-open"]]);
  await at.post(`${mixed}/pieces`, { ticket: "3", claim: "none" });
  expect(at.bench.item).toMatchObject({ ticket: "3" });
  expect(at.bench.item?.claim).toBeUndefined();
  await at.post(`${mixed}/pieces`, { aside: "yes" });

  const unclaimed = await openLot({ name: "Lot 10", claim: "none" });
  await at.post(`${unclaimed}/pieces`, { celsius: "21.4" });
  await at.post(`${unclaimed}/pieces`, { ticket: "4" });
  expect(at.bench.item).toMatchObject({ ticket: "4" });
});

test("a full lot says so and takes one piece more only on a word", async () => {
  const lot = await openLot({ count: "1" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  expect(await textOf(at, lot)).toContain(tell(message("lots.step.full", { counted: 1 }), "en"));
  const { body } = await at.app.inject({ url: lot, headers: { host } });
  // the next thing is no ticket: it leads to where the lot is closed, which is open
  expect(body).toMatch(/<a href="#closing-by" id="next"/);
  expect(body).toMatch(/<details class="fold"[^>]* open[^>]*>(?:(?!<\/details>).)*id="closing-by"/s);
  const refused = await at.post(`${lot}/pieces`, { ticket: "32", claim: "au-585" });
  expect([refused.statusCode, codesIn(refused.body)]).toEqual([422, ["lot.full"]]);
  expect(at.bench.open).toBeUndefined();
  await at.post(`${lot}/pieces`, { ticket: "32", claim: "au-585", beyond: "yes" });
  expect(at.bench.open).toMatchObject({ ticket: "32" });
});

test("one fineness is stated for several pieces at once; a ticket nobody weighed states none", async () => {
  const lot = await openLot({ count: "9" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  for (const ticket of ["A-9", "A-10", "A-11"]) await weigh(lot, ticket, "12.90", "11.932");
  await weigh(lot, "B-1", "12.90", "11.932", "au-750");
  const said = { permille: "585", saidBy: "stamp", saidByName: "KR" };
  const unknown = await at.post(`${lot}/fineness`, { ...said, finenessTickets: "A-9, C-7" });
  expect([unknown.statusCode, codesIn(unknown.body)]).toEqual([422, ["lot.ticket-unknown"]]);
  expect(await at.ledger.entries({ kind: "lot-terms" })).toHaveLength(0);
  await at.post(`${lot}/fineness`, { ...said, finenessTickets: "A-9 – A-10" });
  expect(await at.ledger.entries({ kind: "lot-terms" })).toHaveLength(2);
  await at.post(`${lot}/fineness`, { ...said, permille: "750", ofClaim: "au-750" });
  const terms = await at.ledger.entries({ kind: "lot-terms" });
  expect(terms.map(({ body }) => body)).toMatchObject([
    { fineness: { permille: "585", saidBy: "stamp" } },
    { fineness: { permille: "585", saidBy: "stamp" } },
    { fineness: { permille: "750", saidBy: "stamp" } },
  ]);
});

test("the records of one lot are taken out from its page, and of no other", async () => {
  const lot = await openLot();
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weigh(lot, "31", "12.90", "11.932");
  const other = await openLot({ name: "Lot 8" });
  await at.post(`${other}/pieces`, { celsius: "21.4" });
  await weigh(other, "77", "7.15", "6.614");
  const page = await at.app.inject({ url: lot, headers: { host } });
  expect(page.body).toContain(`href="${lot}/records.csv"`);
  const { body } = await at.app.inject({ url: `${lot}/records.csv`, headers: { host } });
  const rows = body.trim().split("\r\n");
  expect(rows).toHaveLength(2);
  expect(rows[1]).toContain(",31,");
});

test("on a cable a second press takes nothing: the piece has to move first", async () => {
  const demo = await buildTestBench(undefined, { demo: true });
  try {
    const lot = await openedLot(demo, { count: "9" });
    await demo.post(`${lot}/pieces`, { celsius: "21.4" });
    await demo.post(`${lot}/pieces`, { ticket: "MQ-101", claim: "ag-925" });
    await demo.post("/demo/simulator", { action: "dry" });
    const first = { take: "dry", subject: demo.bench.about.subject, version: String(demo.bench.about.seen) };
    await demo.post(`${lot}/pieces`, first);
    expect(demo.bench.open?.captures).toHaveLength(1);
    // once more from the page of before, and then from the page as it is now
    expect((await demo.post(`${lot}/pieces`, first)).statusCode).toBe(303);
    const bounced = await demo.post(`${lot}/pieces`, { take: "immersed" });
    expect(codesIn(bounced.body)).toEqual(["lot.load-unmoved"]);
    expect(demo.bench.open?.captures).toHaveLength(1);
    await demo.post("/demo/simulator", { action: "wet" });
    const roles = async () => {
      await demo.post(`${lot}/pieces`, { take: "immersed" });
      return demo.bench.item?.captures.map(({ role }) => role);
    };
    await expect.poll(roles, { timeout: 20_000 }).toEqual(["dry", "immersed"]);
  } finally {
    await demo.close();
  }
}, 60_000);
