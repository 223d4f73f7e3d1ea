import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";
import { recorded, textOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const piece = { dry: "31.1035", immersed: "28.1435" };

test("without a setting every record is kept for good; a setting counts for what is recorded after it", async () => {
  await recorded(at, { id: "old-1", ...piece });
  expect(await textOf(at, "/settings/retention")).toContain("every record is kept for good");
  await at.post("/settings/retention", { years: "0,5", by: "K", reason: "rule of the house" });
  await recorded(at, { id: "new-1", ...piece });
  const text = await textOf(at, "/settings/retention");
  expect(text).toContain("Kept at least 0.5 years");
  expect(text).toMatch(/new-1 \d{4}-\d\d-\d\d \d{4}-\d\d-\d\d time is ending/);
  expect(text).not.toContain("old-1");
  expect(text).toMatch(/0.5 K rule of the house/);
});

test("a longer time counts for records that exist, a shorter one does not, and nothing is deleted", async () => {
  await at.post("/settings/retention", { years: "0.5" });
  await recorded(at, { id: "new-1", ...piece });
  await at.post("/settings/retention", { years: "10" });
  expect(await textOf(at, "/settings/retention")).not.toContain("time is ending");
  await at.post("/settings/retention", { years: "0.5" });
  expect(await textOf(at, "/settings/retention")).not.toContain("time is ending");
  expect((await at.ledger.records()).count).toBe(1);
});

test.each([
  ["", "form.number.empty"],
  ["0", "form.number.not-above-zero"],
  ["ten", "form.number.not-a-number"],
  ["201", "form.number.above"],
])("%j years are refused with what would be right", async (years, code) => {
  const answer = await at.post("/settings/retention", { years });
  expect(answer.statusCode).toBe(422);
  expect(codesIn(answer.body)).toContain(code);
  expect(await at.ledger.entries({ kind: "retention" })).toEqual([]);
});
