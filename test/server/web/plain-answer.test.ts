import { afterEach, beforeEach, expect, test } from "vitest";
import { isRefused } from "../../../server/compute/evaluation.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

async function typed(dry: string, rise: string, ticket = "A") {
  await at.post("/bench/piece", {
    ticket,
    description: "",
    method: "displaced",
    claim: "ag-999",
    key: ticket,
  });
  await at.post("/bench/typed-readings", { role: "dry", reading: dry, unit: "g" });
  await at.post("/bench/typed-readings", { role: "rise", reading: rise, unit: "g" });
  await at.post("/bench/water", { celsius: "20" });
}

/** The statement of the weighing on the bench: its state, and which metals it leaves. */
function stated() {
  const { evaluation } = at.bench;
  if (!evaluation || isRefused(evaluation)) throw new Error("no statement");
  const { conformity, not_excluded } = evaluation.statement;
  const sterling = not_excluded.find(({ id }) => id === "ag-925")?.likelihood_ratio ?? 0;
  return { state: conformity?.state, left: not_excluded.map(({ id }) => id), sterling };
}
const page = async (url: string, language = "en") =>
  wordsOf((await at.app.inject({ url, headers: { host, "accept-language": language } })).body);

// A troy ounce of silver, 31.1 g, displaces 31.1 / 10.49 = 2.96 g of water and one of copper 31.1 / 8.94 = 3.48 g: half a
// gram apart, while silver 999 and 925 (10.49 and 10.36, ASM handbook values from memory) are 0.04 g apart.

test("a scale of 0.1 g tells silver from copper and not 999 from 925, and the answer on page and record says so", async () => {
  await typed("31.1", "2.9");
  expect(stated().left).toContain("ag-925");
  expect(stated().left).not.toContain("el-cu");
  expect(stated().state).not.toBe("consistent");
  for (const [language, copper] of [
    ["en", /[Nn]ot copper/],
    ["de", /[Nn]icht Kupfer/],
    ["es", /[Nn]o es cobre|[Nn]o cobre/],
  ] as const)
    expect(await page("/", language)).toMatch(copper);
  await at.post("/bench/record", {});
  expect(await page("/records/A")).toMatch(/[Nn]ot copper/);
});

test("what is left follows the scale: 1 g cannot tell copper, 0.001 g tells most of 925", async () => {
  await typed("31", "3");
  expect(stated().left).toContain("el-cu");
  const coarse = stated().sterling;
  await at.post("/bench/call-off", { reason: "too coarse" });
  await typed("31.100", "2.959", "B");
  expect(stated().left).not.toContain("el-cu");
  // only sterling with palladium still fits, which is rarely met
  expect(stated().sterling).toBeLessThan(coarse / 2);
});

test("a claim that is excluded gets no advice to separate it", async () => {
  await typed("31.1", "3.5");
  expect(stated().state).toBe("excluded");
  expect(await page("/")).not.toContain("This scale can");
});
