import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { host } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  await at.post("/bench/piece", { ticket: "Doe-17", method: "hung", claim: "ag-999", key: "bar-1" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
  await at.post("/bench/record", {});
});
afterEach(() => at.close());

test("a record has a label of one small page; a piece without a record has none", async () => {
  const label = await at.app.inject({ url: "/records/bar-1/label.pdf", headers: { host } });
  expect(label.headers["content-type"]).toBe("application/pdf");
  // 62 mm × 29 mm in points of 1/72 inch
  const [, width, height] =
    /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(label.rawPayload.toString("latin1")) ?? [];
  expect(Number(width)).toBeCloseTo((62 / 25.4) * 72, 1);
  expect(Number(height)).toBeCloseTo((29 / 25.4) * 72, 1);
  expect(label.rawPayload.toString("latin1").match(/\/Type \/Page\b/g)).toHaveLength(1);
  expect((await at.app.inject({ url: "/records/none/label.pdf", headers: { host } })).statusCode).toBe(404);
});
