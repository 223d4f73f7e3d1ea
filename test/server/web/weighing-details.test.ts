import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { isRefused } from "../../../server/compute/evaluation.ts";
import { conditionsOf } from "../../../server/reports/conditions.ts";
import { writingIn } from "../../../server/reports/writing.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { asked } from "../page-fields.ts";
import { textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(async () => {
  vi.useRealTimers();
  await at.close();
});

const open = (method: string) =>
  at.post("/bench/piece", { ticket: "m-1", description: "a piece", method, claim: "", key: "m-1" });
const reading = (role: string, text: string) =>
  at.post("/bench/typed-readings", { role, reading: text, unit: "g" });
const water = () => at.post("/bench/water", { celsius: "21.4" });
const details = (fields: Record<string, string>) => at.post("/bench/details", fields);
const entries = async () =>
  (await at.ledger.entriesOf("m-1")).filter(({ kind }) => kind === "weighing-details");
function evaluated() {
  const { evaluation } = at.bench;
  if (!evaluation || isRefused(evaluation)) throw new Error(`not evaluated: ${JSON.stringify(evaluation)}`);
  return evaluation;
}

// Water at 21.4 °C: 0.997907 g/cm³ (Tanaka et al. 2001, metrologia 38, 301). Air 0.0012 g/cm³ (common practice).
const rhoWater = 0.997907;
const rhoAir = 0.0012;
const steel = 8;
/** What a balance adjusted with weights of 8 g/cm³ shows for this mass and volume in a fluid: weights float too. */
const shownIn = (fluid: number, grams: number, cm3: number) => (grams - fluid * cm3) / (1 - rhoAir / steel);

describe("more about this weighing", () => {
  test("several identical pieces: the density is their mean, and the page says how many odd ones would hide", async () => {
    await open("hung");
    await details({ pieces: "10", "odd-density": "17.0" });
    // ten of 3.11 g at 19.3 g/cm³ on a 0.01 g scale
    await reading("dry", "31.10");
    await reading("immersed", "29.49");
    await water();
    expect(evaluated().request.pieces).toBe(10);
    // One of ten at 17.0 moves 1/ρ by a tenth of (1/17.0 − 1/19.3): the mean from 19.3 to 19.04.
    const { density_g_cm3: rho, expanded_g_cm3: expanded } = evaluated().statement;
    const mean = (odd: number) => 10 / ((10 - odd) / rho + odd / 17);
    const hidden = [1, 2, 3, 4, 5, 6, 7, 8, 9].filter((odd) => rho - mean(odd) <= expanded).length;
    const { params } = evaluated().statement.checks.find(({ code }) => code === "measurement.pool") ?? {};
    expect(params).toMatchObject({ pieces: 10, odd_g_cm3: 17 });
    // under a claim the others may lie anywhere in its band, so that as many or more hide
    expect(Number(params?.hidden)).toBeGreaterThanOrEqual(hidden);
    expect(await entries()).toHaveLength(1);
  });

  test("a stone of known mass and density is taken out of both weighings", async () => {
    // 5 g of metal at 15.5 g/cm³ and a diamond of one carat: 0.2 g at 3.52 g/cm³ (density of diamond, CRC handbook [from memory])
    const cm3 = 5 / 15.5 + 0.2 / 3.52;
    await open("hung");
    await reading("dry", shownIn(rhoAir, 5.2, cm3).toFixed(4));
    await reading("immersed", shownIn(rhoWater, 5.2, cm3).toFixed(4));
    await water();
    expect(evaluated().statement.density_g_cm3).toBeLessThan(14);
    await details({
      "added-name": "diamond",
      "added-mass": "0.2",
      "added-mass-u": "0.0005",
      "added-density": "3.52",
      "added-density-u": "0.005",
    });
    // readings round to 0.1 mg: 1e-4/0.38 of 15.5 is 0.004, and dissolved air adds less
    expect(Math.abs(evaluated().statement.density_g_cm3 - 15.5)).toBeLessThan(0.01);
    expect(
      evaluated()
        .statement.budget.map(({ input }) => input)
        .join(),
    ).toContain("diamond");
    expect(await textOf(at, "/")).toContain("Name of the body diamond");
  });

  test("a hanger weighed in gives what a hanger zeroed at its depth gives", async () => {
    const cm3 = 20 / 10.49;
    await open("hung");
    await reading("dry", shownIn(rhoAir, 20, cm3).toFixed(4));
    await reading("immersed", shownIn(rhoWater, 20, cm3).toFixed(4));
    await water();
    const zeroed = evaluated().statement.density_g_cm3;
    await at.post("/bench/call-off", { reason: "again with the hanger" });
    await at.post("/bench/piece", { ticket: "m-2", method: "hung", claim: "", key: "m-2" });
    await details({ "hanger-in-liquid": "3.2518" });
    await reading("dry", shownIn(rhoAir, 20, cm3).toFixed(4));
    await reading("immersed", (shownIn(rhoWater, 20, cm3) + 3.2518).toFixed(4));
    await water();
    expect(evaluated().request.hanger?.zeroed).toBe("weighed");
    expect(evaluated().statement.density_g_cm3).toBeCloseTo(zeroed, 6);
    expect(evaluated().statement.budget.some(({ input }) => input.startsWith("hanger in liquid"))).toBe(true);
  });

  test("another liquid: its stated density, at another temperature by its expansion", async () => {
    // An invented bottle: 0.8000 g/cm³ at 20 °C, 1.1e-3 per °C, so 0.8000·(1 − 1.1e-3·1.4) at 21.4 °C.
    const rho = 0.8 * (1 - 1.1e-3 * 1.4);
    const cm3 = 20 / 10.49;
    await open("hung");
    await details({
      liquid: "stated",
      "liquid-name": "spirit",
      "liquid-lot": "B7",
      "liquid-density": "0.8000",
      "liquid-density-u": "0.0002",
      "liquid-stated-at": "20",
      "liquid-expansion": "0.0011",
    });
    await reading("dry", shownIn(rhoAir, 20, cm3).toFixed(4));
    await reading("immersed", shownIn(rho, 20, cm3).toFixed(4));
    await water();
    // 0.1 mg in 1.52 g displaced is 7e-4 of 10.49 at most
    expect(Math.abs(evaluated().statement.density_g_cm3 - 10.49)).toBeLessThan(0.002);
    expect(evaluated().statement.budget.some(({ input }) => input === "density of spirit, lot B7")).toBe(
      true,
    );
    await asked(at.bench).record();
    expect(JSON.stringify((await at.ledger.entriesOf("m-1")).at(-1)?.body)).toContain("spirit, lot B7");
  });

  test("another liquid measured with a body of known volume", async () => {
    const rho = 0.79;
    const cm3 = 20 / 10.49;
    const body = { grams: 22.3, cm3: 10 };
    await open("hung");
    await details({
      liquid: "measured",
      "liquid-name": "spirit",
      "body-volume": "10.000",
      "body-volume-u": "0.002",
      "body-dry": shownIn(rhoAir, body.grams, body.cm3).toFixed(4),
      "body-immersed": shownIn(rho, body.grams, body.cm3).toFixed(4),
    });
    await reading("dry", shownIn(rhoAir, 20, cm3).toFixed(4));
    await reading("immersed", shownIn(rho, 20, cm3).toFixed(4));
    await water();
    expect(Math.abs(evaluated().statement.liquid_density_g_cm3! - rho)).toBeLessThan(2e-5);
    expect(Math.abs(evaluated().statement.density_g_cm3 - 10.49)).toBeLessThan(0.002);
    const { request, statement } = evaluated();
    const entry = { request, statement, versions: {} } as never;
    const liquid = conditionsOf({ result: entry, statement, captures: [] } as never, writingIn("en")).find(
      ({ label }) => label === "Liquid",
    );
    expect(liquid?.value).toBe("spirit");
  });

  test("wire, wetting agent, gradient, air and steps of the display go into the request", async () => {
    await open("hung");
    await details({
      wire: "0.1",
      "wetting-agent": "yes",
      gradient: "0.2",
      "air-temperature": "21.9",
      "air-pressure": "1002.5",
      "air-humidity": "43",
      "step-dry": "0.0005",
      "step-wet": "0.001",
    });
    await reading("dry", "20.0000");
    await reading("immersed", "18.095");
    await water();
    const { request } = evaluated();
    expect(request.hanger?.wire_mm).toBe(0.1);
    expect(request.liquid).toMatchObject({ kind: "water", wetting_agent: true, gradient_c: 0.2 });
    expect(request.air).toEqual({ temperature_c: 21.9, pressure_hpa: 1002.5, humidity_pct: 43 });
    expect(request.balance).toMatchObject({ readability_g: 0.0005, immersed_readability_g: 0.001 });
    const u = (name: string) => evaluated().statement.budget.find(({ input }) => input === name)?.u;
    // rectangular, half a step to either side: d/√12
    expect(u("dry, resolution at load")).toBeCloseTo(0.0005 / Math.sqrt(12), 9);
    expect(u("immersed, resolution at load")).toBeCloseTo(0.001 / Math.sqrt(12), 9);
    expect(u("temperature gradient")).toBeCloseTo(0.2 / Math.sqrt(3), 9);
  });
});

describe("zeros beside a weighing", () => {
  test("hung, zero before and after: the drift is rectangular between them", async () => {
    await open("hung");
    await reading("zero", "0.0000");
    await reading("dry", "20.0000");
    await reading("immersed", "18.0956");
    expect((await reading("zero", "-0.0006")).statusCode).toBe(303);
    await water();
    const drift = evaluated().statement.budget.find(({ input }) => input === "immersed, zero drift");
    expect(drift?.value).toBeCloseTo(-0.0003, 9);
    expect(drift?.u).toBeCloseTo(0.0003 / Math.sqrt(3), 9);
    expect(await textOf(at, "/")).toMatch(
      /empty hanger read 0 mg before and -0\.6 mg after|The empty hanger read/,
    );
  });

  test("displaced, an evaporating beaker: zeros and readings in time give the load without drift and film", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-03-02T09:00:00Z") });
    const minute = async (n: number, role: string, text: string) => {
      vi.setSystemTime(new Date(Date.parse("2026-03-02T09:00:00Z") + n * 60_000));
      await reading(role, text);
    };
    await open("displaced");
    await details({ drift: "wet" });
    await minute(0, "dry", "31.1035");
    // 1 mg a minute evaporates; 28 mg of film leave with the piece; the piece displaces 3.1000 g
    await minute(1, "zero", "0.0000");
    await minute(2, "zero", "-0.0010");
    await minute(3, "rise", "3.0980");
    await minute(4, "rise", "3.0970");
    await minute(5, "zero", "-0.0320");
    await water();
    expect(evaluated().displacedGrams).toBeCloseTo(3.1, 6);
    expect(evaluated().request.method === "displaced" && evaluated().request).toMatchObject({
      rise: {
        lifted: "wet",
        timed: [{ at_s: 0 }, { at_s: 60 }, { at_s: 120 }, { at_s: 180 }, { at_s: 240 }],
      },
    });
    // a zero set aside stays on the page and leaves the fit
    const zero = at.bench.item?.captures.find(({ text }) => text === "-0.0010");
    await at.post(`/bench/captures/${zero?.id}/voiding`, { reason: "door was open" });
    expect(await textOf(at, "/")).toContain("door was open");
    expect(evaluated().request).toMatchObject({ rise: { timed: { length: 4 } } });
  });

  test("displaced without a fit: only the zero before counts, since the one after lost a film of water", async () => {
    await open("displaced");
    await reading("dry", "31.1035");
    await reading("zero", "-0.0010");
    await reading("rise", "3.0990");
    await reading("zero", "-0.0290");
    await water();
    expect(evaluated().displacedGrams).toBeCloseTo(3.1, 6);
  });
});

describe("dry once more after the immersion", () => {
  test("a gain is named and asked about, and every reading stays as it was", async () => {
    await open("hung");
    await reading("dry", "20.0000");
    await reading("immersed", "18.0956");
    await reading("dry-after", "20.0150");
    await water();
    const page = await textOf(at, "/");
    expect(page).toContain(messageText("check.dry-mass-changed.ask", { cause: "water" }));
    // the mass is that of the dry reading before: 20·(1 − ρa/8)/(1 − ρa/10.47), not the wetter one
    expect(evaluated().statement.mass_g).toBeCloseTo(19.9993, 3);
    const kept = (await at.ledger.entriesOf("m-1")).flatMap(({ body }) => ("reading" in body ? [body] : []));
    expect(JSON.stringify(kept)).toMatch(/20\.0000.*18\.0956.*20\.0150/);
  });
});

describe("what is refused", () => {
  test("says field, value and range, keeps what was typed, stores nothing", async () => {
    await open("hung");
    const answer = await details({ pieces: "5", "odd-density": "99" });
    expect(answer.statusCode).toBe(422);
    expect(wordsOf(answer.body)).toContain(
      messageText("form.number.out-of-range", { value: "99", unit: " g/cm³", from: 0.5, to: 25 }),
    );
    expect(answer.body).toMatch(/name="pieces"[^>]*value="5"|value="5"[^>]*name="pieces"/);
    expect(await entries()).toHaveLength(0);
    expect((await details({ pieces: "2.5" })).statusCode).toBe(422);
    expect((await details({ "odd-density": "17" })).body).toContain(messageText("form.number.empty"));
    expect((await details({ "hanger-in-air": "3.25" })).body).toContain(messageText("form.number.empty"));
  });

  test("a restart finds the details as they were stated last", async () => {
    await open("hung");
    await details({ pieces: "5" });
    await details({ pieces: "6" });
    await at.app.close();
    await at.balance.close();
    await at.ledger.close();
    at = await buildTestBench(at.file);
    expect(at.bench.item?.details).toEqual({ pieces: 6 });
    expect(await entries()).toHaveLength(2);
  });
});
