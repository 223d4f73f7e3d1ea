import { afterEach, beforeEach, expect, test } from "vitest";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  const kept = await at.post("/settings/second-person", { secondMassG: "50", secondWorth: "500" });
  expect(kept.statusCode).toBe(303);
});
afterEach(() => at.close());

/** A bar of invented silver, typed up to its record. */
async function typed(dry: string, immersed: string, operator = "KR"): Promise<void> {
  await at.post("/bench/piece", { ticket: "B-7", method: "hung", claim: "ag-999", operator, key: "b7" });
  await at.post("/bench/typed-readings", { role: "dry", reading: dry, unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: immersed, unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
}

const second = (dry: string, immersed: string, who: Record<string, string> = { by: "MT" }) =>
  at.post("/bench/second-person", {
    "reading-dry": dry,
    "unit-dry": "g",
    "reading-immersed": immersed,
    "unit-immersed": "g",
    celsius: "21.4",
    ...who,
  });

const kindsOf = async (piece: string) => (await at.ledger.entriesOf(piece)).map(({ kind }) => kind);

test("a typed piece above the limit gets its record only after a second person has read it blind; record and report say who and when", async () => {
  await typed("100.02", "90.51");
  const refused = await at.post("/bench/record", {});
  expect(refused.statusCode).toBe(422);
  expect(codesIn(refused.body)).toEqual(["weighing.second.needed"]);
  expect(await textOf(at, "/")).toContain("Hand over to a second person");
  const page = await at.app.inject({ url: "/bench/second-person", headers: { host } });
  for (const hidden of ["100.02", "90.51", "21.4"]) expect(page.body).not.toContain(hidden);
  expect((await second("100.02", "90.51")).statusCode).toBe(303);
  expect(await textOf(at, "/")).toContain("Readings typed, confirmed by MT at");
  expect((await at.post("/bench/record", {})).statusCode).toBe(303);
  const record = await textOf(at, "/records/b7");
  expect(record).toMatch(/dry 100\.02 g .* typed, confirmed by MT at \d{4}-\d\d-\d\d/);
  expect(record).toContain("MT read at");
  const issued = await at.post("/records/b7/reports", {});
  expect(await textOf(at, issued.headers.location ?? "")).toMatch(
    /typed.{0,40}, confirmed by MT at \d{1,2} \w{3} \d{4}, \d\d:\d\d/,
  );
});

test("a second person who is the first is sent back, and so is a reading that is none; nothing typed is lost", async () => {
  await typed("100.02", "90.51");
  for (const by of ["KR", "k.r.", ""]) {
    const refused = await second("100.02", "90.51", { by });
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain('value="100.02"');
  }
  const unreadable = await second("hundred", "90.51");
  expect(unreadable.statusCode).toBe(422);
  expect(wordsOf(unreadable.body)).toContain(messageText("form.number.not-a-number", { typed: "hundred" }));
  expect(await kindsOf("b7")).not.toContain("second-reading");
});

test("two readings that disagree are both kept and neither is told to the next, and the record waits until the wrong one is put right", async () => {
  await typed("100.20", "90.51");
  await second("100.02", "90.51");
  expect((await at.post("/bench/record", {})).statusCode).toBe(422);
  const { body } = await at.app.inject({ url: "/bench/second-person", headers: { host } });
  for (const hidden of ["100.20", "100.02", "90.51"]) expect(body).not.toContain(hidden);
  expect(await textOf(at, "/")).not.toContain("100.02");
  const [wrong] = at.bench.item?.captures ?? [];
  await at.post(`/bench/captures/${wrong?.id}/voiding`, { reason: "figures swapped" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "100.02", unit: "g" });
  expect((await at.post("/bench/record", {})).statusCode).toBe(422);
  await second("100.03", "90.51");
  expect((await at.post("/bench/record", {})).statusCode).toBe(303);
  expect((await kindsOf("b7")).filter((kind) => kind === "second-reading")).toHaveLength(2);
  const report = await at.post("/records/b7/reports", {});
  expect(await textOf(at, report.headers.location ?? "")).toMatch(
    /A second person, MT, read at \d{1,2} \w{3} \d{4}, \d\d:\d\d otherwise than was typed: dry 100\.02 g, where 100\.20 g was typed/,
  );
});

test("a confirmed reading is not put right afterwards by the one who typed it", async () => {
  await typed("100.02", "90.51");
  await second("100.02", "90.51");
  await at.post("/bench/record", {});
  const dry = (await at.ledger.entriesOf("b7")).find((entry) => entry.kind === "capture");
  const amend = (by: string, second = "") =>
    at.post("/records/b7/amendments", { [`reading:${dry?.id}`]: "100.07", by, second, reason: "misread" });
  const refused = await amend("kr");
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain("Another person puts them right");
  // nor by the second one alone
  expect(codesIn((await amend("MT")).body)).toContain("settlement.second-missing-above");
  expect(codesIn((await amend("MT", "m.t.")).body)).toContain("settlement.second-same");
  expect((await amend("MT", "PL")).statusCode).toBe(303);
  const text = await textOf(at, "/records/b7");
  expect(text).toContain("dry: 100.02 g → 100.07 g");
  expect(text).toContain("MT with PL");
});

test("below the limit, or with no limit, nobody else is asked", async () => {
  await typed("49.99", "45.24");
  expect((await at.app.inject({ url: "/bench/second-person", headers: { host } })).statusCode).toBe(303);
  expect((await at.post("/bench/record", {})).statusCode).toBe(303);
});

test("in a lot a locked price says what a typed piece is worth: above the limit the loop waits for the second person and then goes on by itself", async () => {
  const { headers } = await at.post("/lots", { name: "Lot 9" });
  const lot = headers.location ?? "";
  const locked = await at.post(`${lot}/payout`, {
    metal: "gold",
    price: "100",
    currency: "EUR",
    per: "g",
    source: "invented",
    at: "2026-11-25 09:00",
    rate: "95",
    fee: "0",
    rounding: "down",
  });
  expect(locked.statusCode).toBe(303);
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  const weigh = async (ticket: string, dry: string, immersed: string) => {
    await at.post(`${lot}/pieces`, { ticket, claim: "au-585", step: at.bench.nextPiece });
    await at.post(`${lot}/pieces`, { typed: dry, role: "dry", unit: "g", step: `${ticket}-0` });
    await at.post(`${lot}/pieces`, { typed: immersed, role: "immersed", unit: "g", step: `${ticket}-1` });
  };
  // 7.15 g of 14 ct are at most 7.15 × 0.59 × 100 = 422 EUR, 12.90 g 761 EUR
  await weigh("31", "7.15", "6.614");
  expect(await textOf(at, lot)).toContain("Scan the next ticket");
  await weigh("32", "12.90", "11.932");
  expect(await textOf(at, lot)).toContain("This piece is above 500 EUR and its readings were typed.");
  await second("12.90", "11.932", { by: "MT", typedBy: "KR" });
  expect(await textOf(at, lot)).toContain("Scan the next ticket");
  const [last] = (await at.ledger.records()).records;
  expect(last).toMatchObject({ ticket: "32", dry: "12.90 g" });
  await weigh("33", "20.00", "18.50");
  await second("20.50", "18.50", { by: "MT", typedBy: "KR" });
  const page = await textOf(at, lot);
  expect(page).toContain("MT read otherwise: dry.");
  expect(page).not.toContain("20.50");
});

test("a typed water temperature is read again too; one that differs holds the record back and is told on it", async () => {
  await typed("100.02", "90.51");
  expect(codesIn((await second("100.02", "90.51", { by: "MT", celsius: "" })).body)).not.toEqual([]);
  await second("100.02", "90.51", { by: "MT", celsius: "24.1" });
  expect(codesIn((await at.post("/bench/record", {})).body)).toEqual(["weighing.second.needed"]);
  const page = await at.app.inject({ url: "/bench/second-person", headers: { host } });
  for (const hidden of ["21.4", "24.1"]) expect(page.body).not.toContain(hidden);
  await at.post("/bench/water", { celsius: "24.1" });
  // what was confirmed was another temperature
  expect((await at.post("/bench/record", {})).statusCode).toBe(422);
  await second("100.02", "90.51", { by: "MT", celsius: "24.1" });
  expect((await at.post("/bench/record", {})).statusCode).toBe(303);
  expect(await textOf(at, "/records/b7")).toMatch(/water temperature 21\.4 °C 24\.1 °C/);
});

test("prices, terms, decisions and whom to believe are agreed by two above a limit, and by one below it", async () => {
  await at.post("/settings/second-person", { secondMassG: "", secondWorth: "600", secondChange: "100" });
  const { headers } = await at.post("/lots", { name: "Lot 9" });
  const lot = headers.location ?? "";
  const price = {
    metal: "gold",
    currency: "EUR",
    per: "g",
    source: "invented",
    at: "2026-11-25 09:00",
    rate: "95",
  };
  // nothing is weighed yet: nothing is worth anything
  expect((await at.post(`${lot}/payout`, { ...price, price: "60" })).statusCode).toBe(303);
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585", step: at.bench.nextPiece });
  await at.post(`${lot}/pieces`, { typed: "12.90", role: "dry", unit: "g", step: "a" });
  await at.post(`${lot}/pieces`, { typed: "11.932", role: "immersed", unit: "g", step: "b" });
  const asked = async (form: string, fields: Record<string, string>) => {
    const sent = { by: "KR", reason: "agreed", ...fields };
    // what it would come to is shown before anybody else is fetched
    expect((await at.post(`${lot}/${form}`, { ...sent, preview: "yes" })).statusCode).toBe(200);
    const alone = await at.post(`${lot}/${form}`, sent);
    const same = await at.post(`${lot}/${form}`, { ...sent, second: "K.R." });
    const two = await at.post(`${lot}/${form}`, { ...sent, second: "MT" });
    return [...codesIn(alone.body), ...codesIn(same.body), two.statusCode];
  };
  const both = ["settlement.second-missing-above", "settlement.second-same", 303];
  // 12.90 g × 585 ‰ × 60 × 95 % = 430.15, far above what the density alone leaves
  expect(await asked("terms", { ticket: "31", permille: "585", saidBy: "laboratory" })).toEqual(
    expect.arrayContaining(both),
  );
  // 430.15 → 437.31: less than 100 and less than 600
  const below = await at.post(`${lot}/payout`, { ...price, price: "61", by: "KR", reason: "board" });
  expect(below.statusCode).toBe(303);
  expect(await asked("payout", { ...price, price: "90" })).toEqual(expect.arrayContaining(both));
  expect(await asked("decisions", { decided: "31", pays: "no" })).toEqual(expect.arrayContaining(both));
  const order = { "trust-1": "stamp", "trust-2": "laboratory", "trust-3": "melt", "trust-4": "density" };
  // nothing is paid any more, so that nothing changes by it
  expect(
    (await at.post(`${lot}/trust`, { ...order, "trust-5": "customer", by: "KR", reason: "x" })).statusCode,
  ).toBe(303);
  const seconds = (await at.ledger.entriesOf(lot.replace("/lots/", ""))).flatMap(({ kind, body }) =>
    "second" in body ? [[kind, body.second]] : [],
  );
  expect(seconds).toEqual([
    ["lot-terms", "MT"],
    ["lot-price", "MT"],
    ["settlement-decision", "MT"],
  ]);
});
