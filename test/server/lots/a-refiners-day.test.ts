import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { message } from "../../../calibration/message.ts";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { settledMelt } from "../melts/settled-melt.ts";
import { recorded, textOf } from "../web/recorded.ts";
import { openedLot, weighed } from "./screened.ts";

const t = tellerOf("en");

/** One day at an invented refiner's counter, each hour as its pages tell it; readings are invented, in g. */
describe("a refiner's day", () => {
  let at: TestBench;
  let lot: string;

  beforeEach(async () => {
    at = await buildTestBench();
  });
  afterEach(() => at.close());

  async function begin(fields: Record<string, string> = {}) {
    lot = await openedLot(at, fields);
    await at.post(`${lot}/pieces`, { celsius: "21.4" });
  }
  const weigh = (ticket: string, dry: string, immersed: string, claim?: string) =>
    weighed(at, lot, ticket, dry, immersed, claim);
  const lock = (price: string, fields: Record<string, string> = {}) =>
    at.post(`${lot}/payout`, {
      metal: "gold",
      price,
      currency: "EUR",
      per: "g",
      source: "harbour board",
      at: "2026-03-02 09:30",
      rate: "95",
      rounding: "down",
      ...fields,
    });

  it("runs from ticket to ticket, with trays, fine mass and the gap to the gross mass running along", async () => {
    await begin({ gross: "32.95", count: "3" });
    await weigh("31", "12.90", "11.932");
    await weigh("32", "10.00", "8.826");
    const text = await textOf(at, lot);
    // 32.95 − 12.90 − 10.00
    expect(text).toContain("2 of 3 counted");
    expect(text).toContain("10.05 g not weighed yet");
    expect(text).toMatch(/consistent, but not unique 1 12\.90\d* g 31/);
    expect(text).toMatch(/≠ excluded 1 10\.00\d* g 32/);
    expect(text).toMatch(/Fine mass [\d.]+ to [\d.]+ g gold/);
    expect(text).toContain("Enter on an empty field takes 33");
  });

  it("a chain of 585 at 12.9 is told to be as light as 585 gets, with what makes it so and what to do", async () => {
    await begin();
    // 12.9 g/cm³: the loss in water of 0.998 g/cm³ is 1.00 g
    await weigh("41", "12.900", "11.902");
    // 13.8 g/cm³, yellow: nothing to say
    await weigh("42", "13.800", "12.803");
    const text = await textOf(at, lot);
    expect(text).toContain(tell(message("lot-check.light-for-claim", { permille: 585 }), "en"));
    expect(text).toContain("hold a magnet to it");
    expect(text).toContain("or lay it with the suspects. (41)");
    // the operator lays it aside with the suspects, in own words
    await at.post(`${lot}/flags`, {
      flagTicket: "41",
      own: "suspect",
      action: "set",
      reason: "magnet held the clasp",
    });
    expect(await textOf(at, lot)).toContain("light for its claim ; suspect (magnet held the clasp)");
  });

  it("turns to the seller the instrument's own weight, its unit and the price of the lot, and no opinion", async () => {
    await begin();
    await lock("60");
    await at.post(`${lot}/pieces`, { ticket: "51", claim: "au-585", step: at.bench.nextPiece });
    await at.post(`${lot}/pieces`, {
      typed: "12.90",
      role: "dry",
      unit: "g",
      step: `${at.bench.item?.id}-0`,
    });
    const text = await textOf(at, "/customer");
    expect(text).toContain("Weighed dry, as the instrument showed it: 12.90 g");
    expect(text).toContain("is not the mass of the piece");
    expect(text).toContain("Price of fine gold for this lot 60 EUR per gram of which 95 % is paid");
    expect(text).toMatch(/harbour board, as of 2026-03-02 09:30; locked \d{4}-/);
    expect(text).not.toMatch(/g\/cm³ [\d.]+ ±|‰|consistent|cannot tell|585|Fine mass/);
    await at.post(`${lot}/pieces`, { aside: "yes" });
    await at.post("/bench/piece", {
      ticket: "A-9",
      description: "",
      method: "hung",
      claim: "",
      key: "other",
    });
    expect(await textOf(at, "/customer")).not.toContain("Price of fine");
  });

  it("a price locked while the seller watches comes onto the open window by itself", async () => {
    await begin();
    await at.post(`${lot}/pieces`, { ticket: "51", claim: "au-585", step: at.bench.nextPiece });
    const address = await at.app.listen({ port: 0, host: "127.0.0.1" });
    const ended = new AbortController();
    const stream = await fetch(`http://localhost:${new URL(address).port}/customer/live`, {
      signal: ended.signal,
    });
    const locked = lock("61.50");
    let text = "";
    for await (const chunk of stream.body ?? []) {
      text += Buffer.from(chunk).toString();
      if (text.includes("61.50 EUR per gram")) break;
    }
    ended.abort();
    expect((await locked).statusCode).toBe(303);
    expect(text).not.toMatch(/‰|585|Fine mass/);
  });

  it("a sum that is too heavy by one mass names the two tickets that weigh it", async () => {
    await begin({ gross: "21.89", count: "4" });
    await weigh("30", "12.90", "11.932");
    await weigh("31", "1.84", "1.702");
    await weigh("32", "1.84", "1.702");
    await weigh("33", "7.15", "6.614");
    const text = await textOf(at, lot);
    expect(text).toContain("1.84 g too much");
    const same = message("lot-check.same-mass-in-excess", { tickets: 2, mass_g: 1.84 });
    expect(text).toContain(tell(same, "en"));
    expect(text).toContain("(31, 32)");
  });

  it("a price that moves is locked anew with its time; the earlier one stays in the ledger", async () => {
    await begin();
    await weigh("31", "12.90", "11.932");
    await lock("60");
    expect((await lock("61.50", { at: "2026-03-02 11:05" })).statusCode).toBe(422);
    await lock("61.50", { at: "2026-03-02 11:05", by: "KR", reason: "the board moved" });
    const text = await textOf(at, `${lot}/payout`);
    expect(text).toContain("61.50 EUR per gram");
    expect(text).toMatch(/as of 2026-03-02 11:05; locked \d{4}-\d\d-\d\d \d\d:\d\d:\d\d UTC/);
    const prices = await at.ledger.entries({ kind: "lot-price" });
    expect(prices.map(({ body }) => "price" in body && body.price)).toEqual(["60", "61.50"]);
  });

  it("a laboratory's fineness written on the record of a piece settles its line, and a later stamp stands behind it", async () => {
    await begin();
    await weigh("31", "12.90", "11.932");
    await lock("60", { rate: "100" });
    const [record] = (await at.ledger.records({})).records;
    await at.post(`/records/${record?.subject}/laboratory`, {
      metal: "gold",
      permille: "580",
      laboratory: "an invented laboratory",
      report: "L-1",
      method: "cupellation",
      date: "2024-03-28",
    });
    // 12.90 g × 580 ‰ = 7.482 g, at 60 a gram 448.92
    expect(await textOf(at, `${lot}/payout`)).toMatch(
      /580 ‰ an invented laboratory, report L-1; by density \d+ to \d+ ‰: fits 7\.482 g 448\.92 EUR/,
    );
    await at.post(`${lot}/terms`, { ticket: "31", permille: "585", saidBy: "stamp", by: "KR" });
    expect(await textOf(at, `${lot}/payout`)).toMatch(/580 ‰ an invented laboratory.* 448\.92 EUR/);
  });

  it("five earlier melts with final figures narrow the gold of a lot that will be melted, beside the full ends", async () => {
    // five invented bars of 100 g and 500 ‰ whose rest is a good third silver, from 12.54 to 12.60 g/cm³
    for (const [place, immersed] of ["92.05", "92.06", "92.07", "92.08", "92.09"].entries()) {
      const id = `melt-${place}`;
      await recorded(at, { id, dry: "100.00", immersed });
      await settledMelt(at, { bar: id, permille: "500" });
    }
    await begin();
    await weigh("31", "12.900", "11.960");
    await lock("60", { rate: "100" });
    const text = await textOf(at, `${lot}/payout`);
    expect(text).toContain(`${t("assay.own-melts.heading")} 5 gold melts`);
    const [, low, high] = /such a melt together, they hold ([\d.]+) to ([\d.]+) g of gold/.exec(text) ?? [];
    const [, freeLow, freeHigh] = /density ([\d.]+) to ([\d.]+) g [\d.]+ EUR/.exec(text) ?? [];
    expect(Number(low)).toBeGreaterThan(Number(freeLow));
    expect(Number(high)).toBeLessThan(Number(freeHigh));
    const [, pay] = /paid ([\d.]+) to [\d.]+ EUR before the fee/.exec(text) ?? [];
    // the fine mass is shown to 0.01 g, which is 0.60 at this price
    expect(Math.abs(Number(pay) - 60 * Number(low))).toBeLessThan(0.31);
  });
});
