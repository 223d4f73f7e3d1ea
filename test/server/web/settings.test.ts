import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { messageText } from "../../message-text.ts";
import { buildTestBench, newLedgerFile, type TestBench } from "../build.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const host = "localhost:1";
const get = (url: string, cookie?: string) =>
  at.app.inject({ url, headers: { host, ...(cookie === undefined ? {} : { cookie }) } });

const typedBench = {
  method: "displaced",
  metal: "silver",
  water: "tap",
  scaleStep: "0,1",
  scaleStepUnit: "g",
  secondUnit: "ozt",
  repeatabilityGrams: "",
  immersedRepeatabilityGrams: "",
  linearityGrams: "0,002",
  confidencePercent: "99",
  thermometerHalfWidthCelsius: "0.1",
  dissolvedSolidsMgPerL: "300",
  altitudeMetres: "520",
  wireMillimetres: "0.1",
  bubbleAllowanceMg: "1",
};

async function weighed(ticket: string) {
  await at.post("/bench/piece", {
    ticket,
    description: "a bar",
    method: "hung",
    claim: "ag-999",
    key: ticket,
  });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
  await at.post("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" });
  await at.post("/bench/water", { celsius: "21.4" });
}

async function requestOf(piece: string) {
  const result = (await at.ledger.entriesOf(piece)).find(({ kind }) => kind === "result");
  return result?.kind === "result" ? result.body.request : undefined;
}

describe("how the bench weighs", () => {
  test("a kept condition is used from then on, and a record written before keeps its own", async () => {
    await weighed("A-1");
    await at.post("/bench/record", {});
    expect((await at.post("/settings/bench", typedBench)).statusCode).toBe(303);
    expect(at.settings.now.secondUnit).toBe("ozt");
    await weighed("A-2");
    await at.post("/bench/record", {});
    expect(await requestOf("A-1")).toMatchObject({ confidence: 0.9545, air: { altitude_m: 0 } });
    expect(await requestOf("A-2")).toMatchObject({
      confidence: 0.99,
      air: { altitude_m: 520 },
      liquid: { purity: "tap", dissolved_solids_mg_l: 300 },
      balance: { linearity_g: 0.002 },
      hanger: { wire_mm: 0.1 },
      bubble_allowance_mg: 1,
    });
  });

  test("the piece on the bench is evaluated anew as soon as the settings change", async () => {
    await weighed("A-1");
    const before = at.bench.evaluation;
    await at.post("/settings/bench", typedBench);
    await expect.poll(() => at.bench.evaluation).not.toBe(before);
    expect(at.bench.evaluation).toMatchObject({ request: { air: { altitude_m: 520 } } });
  });

  test("a value out of range is refused in words at its field, what was typed stays, nothing changes", async () => {
    const answer = await at.post("/settings/bench", {
      ...typedBench,
      thermometerHalfWidthCelsius: "9",
      altitudeMetres: "high",
    });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain(
      messageText("form.number.out-of-range", { value: "9", unit: "\u00a0°C", from: 0, to: 5 }),
    );
    expect(answer.body).toContain(messageText("form.number.not-a-number", { typed: "high" }));
    expect(answer.body).toContain('value="high"');
    expect(answer.body).toContain('value="300"');
    expect(at.settings.now.conditions.purity).toBe("distilled");
  });

  test("settings survive a restart, and each change stays in the ledger", async () => {
    await at.post("/settings/bench", typedBench);
    await at.post("/settings/bench", { ...typedBench, altitudeMetres: "530" });
    const { file } = at;
    await at.close();
    at = await buildTestBench(file);
    expect(at.settings.now.conditions.altitudeMetres).toBe("530");
    expect(at.settings.now.scaleStep).toEqual({ text: "0.1", unit: "g" });
    const kept = await at.ledger.entries({ kind: "settings" });
    expect(kept).toHaveLength(3);
  });

  test("a new piece begins with the kept method, and the list of claims with the kept metal", async () => {
    await at.post("/settings/bench", { ...typedBench, metal: "platinum" });
    const { body } = await get("/");
    expect(body).toMatch(/<option selected value="displaced"|<option value="displaced" selected/);
    const claims = [...body.matchAll(/<option value="([a-z0-9-]+)"/g)].map(([, id]) => id);
    expect(claims[0]).toMatch(/^p[td]-/);
  });
});

describe("the look", () => {
  test("theme, language and keys are kept on the device, and every page follows them", async () => {
    const kept = await at.post("/settings/look", { theme: "dark", locale: "de" });
    const cookie = String(kept.headers["set-cookie"]).match(/underhook-look=[^;]+/)?.[0] ?? "";
    for (const url of ["/", "/records", "/settings", "/first-start", "/nowhere"]) {
      const { body } = await get(url, cookie);
      expect(body, url).toContain('<html lang="de" data-theme="dark" data-keys="off">');
    }
    expect((await get("/", undefined)).body).toContain('data-theme="auto" data-keys="on"');
  });

  test("a look that no page offers falls back to the plain one", async () => {
    const { body } = await get("/", "underhook-look=neon.xx.maybe");
    expect(body).toContain('<html lang="en" data-theme="auto" data-keys="on">');
  });
});

describe("first start", () => {
  beforeEach(async () => {
    await at.close();
    at = await buildTestBench(newLedgerFile(), { answered: false });
  });

  test("a bench without settings asks its three questions before anything else", async () => {
    const answer = await get("/");
    expect(answer.statusCode).toBe(303);
    expect(answer.headers.location).toBe("/first-start");
    const { body } = await get("/first-start");
    for (const words of [
      "Where does the water stand?",
      "How does the reading get here?",
      "Which water?",
      "Mostly one metal",
    ])
      expect(body).toContain(words);
    expect(body.match(/<svg/g)?.length).toBeGreaterThanOrEqual(3);
  });

  test("the answers become settings and the bench begins with them", async () => {
    const answer = await at.post("/first-start", {
      method: "displaced",
      source: "typed",
      metal: "gold",
      water: "tap",
    });
    expect(answer.headers.location).toBe("/");
    expect(at.settings.now.conditions.purity).toBe("tap");
    const { statusCode, body } = await get("/");
    expect(statusCode).toBe(200);
    expect(body).toMatch(/<option selected value="displaced"|<option value="displaced" selected/);
    const claims = [...body.matchAll(/<option value="([a-z0-9-]+)"/g)].map(([, id]) => id);
    expect(claims[0]).toMatch(/^au-/);
  });

  test("an answer that is not offered sets nothing up and says so", async () => {
    const answer = await at.post("/first-start", { method: "shaken", source: "typed", metal: "gold" });
    expect(answer.statusCode).toBe(422);
    expect(at.settings.answered).toBe(false);
  });

  test("a bench that already weighed a piece is not asked again", async () => {
    await weighed("A-1");
    expect((await get("/")).statusCode).toBe(200);
  });
});

describe("clearing a demonstration that is none", () => {
  test("does nothing on a real bench and says why", async () => {
    const answer = await at.post("/settings/demo-clearing", {});
    expect(answer.statusCode).toBe(409);
    expect(answer.body).toContain("real bench");
  });
});
