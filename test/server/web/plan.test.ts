import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const get = (fields: Record<string, string>) =>
  at.app.inject({ url: `/plan?${new URLSearchParams(fields)}`, headers: { host: "localhost:1" } });

const kitchen = {
  method: "displaced",
  claim: "ag-999",
  mass: "31.1",
  massUnit: "g",
  readability: "0.1",
  readabilityUnit: "g",
};
const answerIn = (body: string) => /<p role="status"><strong>(.*?)<\/strong>/.exec(body)?.[1] ?? "";

describe("a plan before wetting", () => {
  test("the kitchen scale: silver from copper and brass yes, 999 from 925 no", async () => {
    const { statusCode, body } = await get(kitchen);
    expect(statusCode).toBe(200);
    const message = answerIn(body);
    // 31.1 g of fine silver displace 31.1/10.49 · 0.998 = 2.96 g, which this scale shows as 3.0 g (by hand).
    expect(body).toContain("about 3.0 g");
    expect(message).toMatch(/^This scale can tell silver 999 fine from copper, brass, .*, not from .*925/);
    expect(body).toContain("What would help");
    expect(body).toContain("What this scale can answer");
  });

  test("a coin on a scale of 1 g: not possible, with what would be", async () => {
    const { body } = await get({ ...kitchen, mass: "7,97", readability: "1", claim: "au-916" });
    expect(answerIn(body)).toContain("Not possible");
    expect(answerIn(body)).toContain("a scale that shows");
  });

  test("an assayer's balance tells 999 from 925", async () => {
    const { body } = await get({ ...kitchen, method: "hung", readability: "0.1", readabilityUnit: "mg" });
    expect(answerIn(body)).toMatch(/can tell .*925/);
    expect(answerIn(body)).not.toMatch(/not from .*925/);
  });

  test("a flask is planned: what it will show, what it can tell and what would help", async () => {
    const { statusCode, body } = await get({
      ...kitchen,
      method: "flask",
      claim: "au-750",
      mass: "0.2",
      pieces: "100",
      readability: "0.01",
    });
    expect(statusCode).toBe(200);
    // 20 g less 1.28 g of water beside the full flask (by hand); the smallest usual flask is 10 mL
    expect(body).toMatch(/20\.00 g dry, 18\.7\d g more than the full flask of 10 mL/);
    expect(answerIn(body)).toMatch(/^This scale can/);
  });

  test("mass and step in other units give the same answer", async () => {
    const grams = await get(kitchen);
    const others = await get({
      ...kitchen,
      mass: "31100",
      massUnit: "mg",
      readability: "100",
      readabilityUnit: "mg",
    });
    expect(answerIn(others.body)).toBe(answerIn(grams.body));
  });

  test("every refused entry is named at its field and stays as typed", async () => {
    const { statusCode, body } = await get({ ...kitchen, mass: "heavy", readability: "0", pieces: "1.5" });
    expect(statusCode).toBe(422);
    expect(codesIn(body)).toEqual(
      expect.arrayContaining(["form.number.not-a-number", "form.number.not-above-zero", "form.number.whole"]),
    );
    expect(body).toContain('value="heavy"');
  });

  test("begins as the bench is set up: its method, its scale, its metals", async () => {
    await at.settings.keep({ method: "displaced", metal: "gold", scaleStep: { text: "0.05", unit: "g" } });
    const { body } = await get({});
    expect(body).toContain('value="0.05"');
    expect(/<option value="([^"]+)"/.exec(body.slice(body.indexOf('id="claim"')))?.[1]).toMatch(/^au-/);
    expect(body).not.toContain('id="answer-heading"');
  });

  test("a metal of one's own can be planned for", async () => {
    await at.post("/metals/own", {
      name: "Quay bell metal",
      composition: "Cu 78\nSn 22",
      nominal: "8.62",
      low: "8.55",
      high: "8.7",
      magnetism: "none",
      colour: "yellow",
      likelihood: "common",
      source: "own weighings",
    });
    const { statusCode, body } = await get({ ...kitchen, claim: "own-quay-bell-metal", mass: "100" });
    expect(statusCode).toBe(200);
    expect(body).toContain("Quay bell metal");
  });

  test("the bench leads to it from the form of a new piece", async () => {
    const bench = await at.app.inject({ url: "/", headers: { host: "localhost:1" } });
    expect(bench.body).toContain('href="/plan"');
  });
});

describe("the window facing the customer", () => {
  test("shows what was typed, digit for digit, says that it is typed, and nothing computed", async () => {
    await at.settings.keep({
      house: { name: "", address: "", verifiedScale: "S-118", verifiedUntil: "2027-12-31" },
    });
    await at.post("/bench/piece", {
      ticket: "T-<1>",
      description: "a bar",
      method: "hung",
      claim: "ag-999",
      key: "p",
    });
    await at.post("/bench/typed-readings", { role: "dry", reading: "31.10", unit: "g" });
    const { body } = await at.app.inject({ url: "/customer", headers: { host: "localhost:1" } });
    expect(body).toContain("31.10 g");
    expect(body).toContain("typed in by hand");
    expect(body).toContain("T-&lt;1> a bar");
    expect(body).toContain("S-118, seal valid until 2027-12-31");
    expect(body).not.toContain("g/cm³");
    expect(body).not.toContain("<nav");
  });
});
