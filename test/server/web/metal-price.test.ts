import { afterEach, beforeEach, expect, test } from "vitest";
import { tellerOf } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const price = { price: "60", currency: "eur", per: "g", source: "harbour board", at: "2026-03-02 09:30" };
const asked = (id: string, fields: Record<string, string> = {}) =>
  `/records/${id}/price?${new URLSearchParams({ ...price, ...fields })}`;

/** Low and high of the range, fine mass and money, as the page tells them. */
async function told(url: string) {
  const text = await textOf(at, url);
  const [, low, high] = /Low and high ([\d.]+) to ([\d.]+) EUR/.exec(text) ?? [];
  const [, fineLow, fineHigh] = /Fine metal \(\w+\) ([\d.]+) to ([\d.]+) g/.exec(text) ?? [];
  return { text, money: [low, high].map(Number), fine: [fineLow, fineHigh].map(Number) } as const;
}

test("a price per gram, per pennyweight and per troy ounce gives fine mass times price, low to high", async () => {
  await recorded(at, { id: "ring", claim: "au-585", dry: "7.15", immersed: "6.614" });
  const { text, money, fine } = await told(asked("ring"));
  // shown fine mass is rounded to 0.01 g, half a step of it at 60 a gram is 0.30
  expect(Math.abs(money[0]! - fine[0]! * 60)).toBeLessThan(0.32);
  expect(Math.abs(money[1]! - fine[1]! * 60)).toBeLessThan(0.32);
  expect(money[1]).toBeGreaterThan(money[0]!);
  expect(text).toContain("60 EUR per gram of fine metal");
  expect(text).toContain("harbour board, as of 2026-03-02 09:30");
  // Oregon's own example: 100 a troy ounce is 3.215 a gram and 5 a pennyweight
  const perOunce = await told(asked("ring", { price: "100", per: "ozt" }));
  const perPennyweight = await told(asked("ring", { price: "5", per: "dwt" }));
  expect(perPennyweight.money).toEqual(perOunce.money);
  const perGram = await told(asked("ring", { price: "3.215", per: "g" }));
  expect(Math.abs(perGram.money[0]! - perOunce.money[0]!)).toBeLessThan(0.02);
});

test("it says in words that it is no valuation, what is not known, and what else has this density", async () => {
  await recorded(at, { id: "ring", claim: "au-999", dry: "31.10", immersed: "29.49" });
  const { text } = await told(asked("ring"));
  expect(text).toContain("not a valuation and not an offer");
  expect(text).toContain("What a dealer deducts is not known here");
  expect(text).toContain("The density does not prove the metal.");
  expect(text).toMatch(new RegExp(t("metal-price.not-excluded", { names: "[^.]*[Tt]ungsten" }).slice(0, -1)));
});

test("a piece that disagrees with its claim is warned of before any figure", async () => {
  await recorded(at, { id: "brass", claim: "au-750", dry: "10.00", immersed: "8.826" });
  const { text, money } = await told(asked("brass"));
  expect(text).toContain(t("metal-price.disagrees", { claim: "" }).split("(")[0]!.trim());
  expect(money[0]).toBe(0);
  await recorded(at, { id: "zinc", dry: "10.00", immersed: "8.60" });
  expect(await textOf(at, asked("zinc"))).toContain(t("metal-price.impossible"));
});

test("a laboratory's fineness gives one figure beside the range", async () => {
  await recorded(at, { id: "bar", claim: "au-585", dry: "100.00", immersed: "92.50" });
  await at.post("/records/bar/laboratory", {
    metal: "gold",
    permille: "550",
    laboratory: "an invented laboratory",
    report: "L-1",
    method: "cupellation",
    date: "2024-03-28",
  });
  // 100 g lose 0.006 g to the buoyancy of air and weights: 55.00 g of gold at 60
  expect((await told(asked("bar"))).text).toMatch(/By the laboratory’s fineness 550 ‰: 3299\.\d\d EUR/);
});

test("a price without its source is refused at its field and what was typed stays; nothing is stored", async () => {
  await recorded(at, { id: "ring", claim: "au-585", dry: "7.15", immersed: "6.614" });
  const before = (await at.ledger.entriesOf("ring")).length;
  const answer = await at.app.inject({
    url: asked("ring", { source: "", price: "60,5" }),
    headers: { host },
  });
  expect(answer.statusCode).toBe(422);
  expect(wordsOf(answer.body)).toContain("A price without a source settles nothing");
  expect(answer.body).toContain('value="60,5"');
  expect(await textOf(at, "/records/ring/price")).not.toContain("Low and high");
  expect(await at.ledger.entriesOf("ring")).toHaveLength(before);
});
