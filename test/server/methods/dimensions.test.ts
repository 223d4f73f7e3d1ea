import { afterEach, beforeEach, describe, expect, it, test } from "vitest";
import { compute, isError } from "../../../server/compute/compute.ts";
import { isRefused } from "../../../server/compute/evaluation.ts";
import { methods, screeningMethods } from "../../../server/methods/index.ts";
import { checksOf } from "../../../server/weighing/checks/index.ts";
import type { Situation } from "../../../server/weighing/checks/situation.ts";
import { withStated } from "../../../server/weighing/stated.ts";
import { tell } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { stated } from "../compute/answers.ts";

const length = (...readings: string[]) => ({ readings, u_mm: 0.02 });
const bar = {
  id: "bar",
  method: "dimensions",
  dry: { readings: ["1000.00"] },
  dimensions: {
    shape: "box",
    length_mm: length("80.00"),
    width_mm: length("40.00"),
    height_mm: length("16.20"),
    form_half_width_percent: 0.5,
  },
  air: { density_kg_m3: 1.2, u_kg_m3: 0.02 },
  balance: { readability_g: 0.01, repeatability_g: 0.01 },
};

describe("a request by dimensions", () => {
  it("needs no liquid and gives none back", () => {
    const answer = stated(bar);
    // 1000·(1 − 0.0012/8)/51.84 + 0.0012, worked with mpmath
    expect(answer.density_g_cm3).toBeCloseTo(19.288429938271605, 12);
    expect(answer.liquid_density_g_cm3).toBeNull();
    expect(answer.budget.some(({ input }) => /water|bubbles|wire/.test(input))).toBe(false);
  });

  it.each([
    ["liquid", { liquid: { kind: "water", temperature_c: 20 } }],
    ["immersed", { immersed: { readings: ["900.00"] } }],
    ["dimensions", { dimensions: undefined }],
    ["dimensions.form_half_width_percent", { dimensions: { ...bar.dimensions, form_half_width_percent: 0 } }],
    ["dimensions.height_mm", { dimensions: { ...bar.dimensions, height_mm: length("0.00") } }],
    ["dimensions.height_mm", { dimensions: { ...bar.dimensions, height_mm: undefined } }],
    ["dimensions.wall_mm", { dimensions: { ...bar.dimensions, wall_mm: length("1.00") } }],
    ["dimensions.shape", { dimensions: { ...bar.dimensions, shape: "sphere" } }],
    ["dimensions.length_mm.readings[0]", { dimensions: { ...bar.dimensions, length_mm: length("80,00") } }],
  ])("is refused at %s", (at, changed) => {
    const answer = compute({ ...bar, ...changed });
    expect(isError(answer) && answer.error.at).toBe(at);
  });
});

describe("the form of the dimensions", () => {
  const typed = {
    "box-length": "80,00; 80,02",
    "box-width": "4 cm",
    "box-height": "16.20",
    step: "0.01",
    u: "0.02",
    "form-half-width": "0,5",
  };
  const piece = { method: "dimensions", details: {} } as const;

  it("is kept as a request holds it, and shows again what was typed", () => {
    const { method: kept } = withStated(piece, typed, ",");
    expect(kept).toMatchObject({
      shape: "box",
      length_mm: { readings: ["80.00", "80.02"], u_mm: 0.02 },
      width_mm: { readings: ["40"] },
      form_half_width_percent: 0.5,
      temperature_c: 20,
    });
    expect(methods.dimensions.form?.fieldsOf(kept ?? {})).toMatchObject({ "box-length": "80.00; 80.02" });
  });

  it.each([
    ["box-length", { "box-length": "0" }, "dimensions.not-above-zero"],
    ["box-height", { "box-height": "" }, "form.number.empty"],
    ["box-height", { "box-width": "40.00", "box-height": "abc", step: "" }, "form.number.not-a-number"],
    ["disc-diameter", { "disc-diameter": "38.6" }, "dimensions.two-shapes"],
    ["form-half-width", { "form-half-width": "60" }, "dimensions.out-of-range"],
    ["box-width", { "box-width": "40 g" }, "form.unit.other"],
    ["step", { step: "" }, "dimensions.step-needed"],
  ])("is refused at %s", (at, changed, code) => {
    expect(() => withStated(piece, { ...typed, ...changed }, ".")).toThrow(
      expect.objectContaining({ at, code }),
    );
  });
});

describe("lengths that make no metal", () => {
  const situation = (valueGPerCm3: number): Situation => ({
    method: "dimensions",
    dry: [],
    wet: [],
    claim: { metal: { metal: "au-999" }, lowGPerCm3: 19.22, highGPerCm3: 19.33 },
    density: { valueGPerCm3, expandedGPerCm3: 0.001 * valueGPerCm3 },
    balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, immersedRepeatabilityGrams: 0.01 },
  });

  it.each([
    [19_280, { cause: "unit", unit: "cm", count: 3 }],
    [192.8, { cause: "unit", unit: "cm", count: 1 }],
    [489.7, { cause: "unit", unit: "in", count: 1 }],
    [60, { cause: "dense" }],
    [1.9, { cause: "light" }],
  ])("%d g/cm³ is asked about", (value, params) => {
    const [check] = checksOf(situation(value));
    expect(check).toMatchObject({ code: "check.lengths-unlikely", severity: "stop", params });
  });

  it("a metal is not asked about", () => expect(checksOf(situation(19.28))).toEqual([]));
});

describe("a piece that stays dry, at the bench", () => {
  let at: TestBench;
  beforeEach(async () => {
    at = await buildTestBench();
  });
  afterEach(() => at.close());
  const get = (url: string) => at.app.inject({ method: "GET", url });

  test("is weighed, measured, recorded and reported, without water", async () => {
    await at.post("/bench/piece", { ticket: "m-1", method: "dimensions", claim: "au-999", key: "m-1" });
    await at.post("/bench/typed-readings", { role: "dry", reading: "1000.00", unit: "g" });
    const asked = (await get("/")).body;
    expect(asked).toContain('action="/bench/stated"');
    expect(asked).not.toContain('action="/bench/water"');
    const refused = await at.post("/bench/stated", {
      stated: "yes",
      "tube-diameter": "20.00",
      "tube-wall": "12.00",
      "tube-length": "30.00",
      u: "0.02",
      "form-half-width": "1",
    });
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toMatch(/name="tube-wall"[^>]*value="12.00"/);
    await at.post("/bench/stated", {
      stated: "yes",
      "box-length": "80.00; 80.02; 80.01; 80.01",
      "box-width": "40.00",
      "box-height": "16.20",
      u: "0.02",
      "form-half-width": "0.5",
    });
    const { evaluation } = at.bench;
    if (!evaluation || isRefused(evaluation)) throw new Error(JSON.stringify(evaluation));
    expect(evaluation.statement.volume_cm3).toBeCloseTo((80.01 * 40 * 16.2) / 1000, 9);
    const told = (await get("/")).body;
    expect(told).not.toContain(
      tell({ code: "bench.result.apparent", params: { ratio: "" } }, "en").slice(0, 20),
    );
    // stated about the weighing afterwards: the dimensions stay
    await at.post("/bench/details", {
      "air-temperature": "21",
      "air-pressure": "1013",
      "air-humidity": "40",
    });
    expect(at.bench.item?.details.method).toMatchObject({ shape: "box" });
    expect((await at.post("/bench/record", {})).statusCode).toBe(303);
    const record = (await get("/records/m-1")).body;
    expect(record).toContain("80.01");
    const issued = await at.post("/records/m-1/reports", { step: "one" });
    const report = (await get(issued.headers.location ?? "")).body;
    for (const text of ["R 111-1", "80.02", "16.20"]) expect(report).toContain(text);
  });

  test("is not offered where lots are screened", () => {
    expect(screeningMethods).not.toContain("dimensions");
  });
});
