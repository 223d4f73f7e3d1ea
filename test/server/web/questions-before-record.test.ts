import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const page = async (url: string) => (await at.app.inject({ url, headers: { host: "localhost:1" } })).body;

/** Three immersions that still rise, 2 mg and 1 mg: bubbles leave, and no two agree. */
async function stillClimbing(): Promise<void> {
  const piece = { ticket: "T-1", description: "a bar", method: "hung", claim: "ag-999", key: "piece-1" };
  await at.post("/bench/piece", piece);
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  for (const reading of ["28.1300", "28.1380", "28.1450"])
    await at.post("/bench/typed-readings", { role: "immersed", reading, unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
}

test("while a question of the watch is open, the record waits for what was found, and keeps question and answer", async () => {
  await stillClimbing();
  expect(await page("/")).toContain("What did you find?");

  const refused = await at.post("/bench/record", { found: " " });
  expect(codesIn(refused.body)).toContain("weighing.check.unanswered");
  expect(at.bench.item?.closed).toBeUndefined();

  const found = "a bubble under the loop; the last two stand";
  expect(codesIn((await at.post("/bench/record", { found })).body)).toContain("weighing.check.unconfirmed");
  expect(at.bench.item?.closed).toBeUndefined();
  await at.post("/bench/record", { found, stands: "yes" });
  expect(at.bench.item?.closed?.how).toBe("recorded");
  const record = await page(`/records/${at.bench.item!.id}`);
  expect(record).toContain("Do bubbles still leave the piece?");
  expect(record).toContain(found);
});

test("where nothing is asked, nothing has to be answered", async () => {
  await at.post("/bench/piece", { ticket: "T-2", method: "hung", claim: "ag-999", key: "piece-2" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  expect(await page("/")).not.toContain("What did you find?");
  await at.post("/bench/record", {});
  expect(at.bench.item?.closed?.how).toBe("recorded");
});
