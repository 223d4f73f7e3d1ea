import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

async function typed(dry: string, rise: string, claim = "ag-999") {
  await at.post("/bench/piece", { ticket: "A", description: "", method: "displaced", claim, key: "a" });
  await at.post("/bench/typed-readings", { role: "dry", reading: dry, unit: "g" });
  await at.post("/bench/typed-readings", { role: "rise", reading: rise, unit: "g" });
  await at.post("/bench/water", { celsius: "20" });
}
const page = async (url: string, language = "en") =>
  wordsOf((await at.app.inject({ url, headers: { host, "accept-language": language } })).body);

// A troy ounce of silver, 31.1 g, displaces 31.1 / 10.49 = 2.96 g of water and one of copper 31.1 / 8.94 = 3.48 g: half a
// gram apart, while silver 999 and 925 (10.49 and 10.36, ASM handbook values from memory) are 0.04 g apart.

test("a scale of 0.1 g tells silver from copper and not 999 from 925, and says so at the result", async () => {
  await typed("31.1", "2.9");
  for (const text of [await page("/"), await page("/", "de")].map((text) => text.replace(/\s+/g, " "))) {
    const [, told = "", untold = ""] =
      /(?:This scale can tell Silver 999 fine from|Diese Waage kann hier Feinsilber 999 von) (.*?)(?:not from|nicht von) (.*?)\./.exec(
        text,
      ) ?? [];
    expect(told).toMatch(/copper|Kupfer/);
    expect(untold).toMatch(/925/);
  }
  await at.post("/bench/record", {});
  expect(await page("/records/a")).toMatch(/This scale can tell Silver 999 fine from copper.*not from .*925/);
});

test("the sentence follows the scale: 1 g cannot tell copper, 0.001 g can tell 925", async () => {
  await typed("31", "3");
  const coarse = await page("/");
  expect(coarse).not.toMatch(/This scale can tell Silver 999 fine from copper/);
  await at.post("/bench/call-off", { reason: "too coarse" });
  await at.post("/bench/piece", {
    ticket: "B",
    description: "",
    method: "displaced",
    claim: "ag-999",
    key: "b",
  });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.100", unit: "g" });
  await at.post("/bench/typed-readings", { role: "rise", reading: "2.959", unit: "g" });
  await at.post("/bench/water", { celsius: "20" });
  expect(await page("/")).toMatch(/This scale can tell Silver 999 fine from copper.*925.* here/);
});

test("a claim that is ruled out gets no such sentence", async () => {
  await typed("31.1", "3.5");
  expect(await page("/")).toContain("≠ excluded");
  expect(await page("/")).not.toContain("This scale can");
});
