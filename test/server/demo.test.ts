import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { demoPieces } from "../../server/demo/pieces.ts";
import { builtIn } from "../../server/metals/library.ts";
import { formPoster } from "./form-poster.ts";
import { startBench } from "./running.ts";

test("a dozen invented pieces lie ready; every claim is one the bench offers, and several are false", () => {
  expect(demoPieces.length).toBe(12);
  expect(new Set(demoPieces.map(({ ticket }) => ticket)).size).toBe(12);
  const outside = demoPieces.filter(({ claim, trueDensityGPerCm3 }) => {
    const { low, high } = builtIn.metal(claim).densityGPerCm3;
    return trueDensityGPerCm3 < low || trueDensityGPerCm3 > high;
  });
  // brass, lead, gilded silver, copper-nickel and a closed void lie outside; the tungsten core hides inside the claim
  expect(outside.map(({ ticket }) => ticket)).toEqual(["MQ-102", "MQ-105", "MQ-108", "MQ-110", "MQ-111"]);
});

test("cleared in one action, the demonstration leaves a real bench without a trace of it", async () => {
  const bench = await startBench([]);
  try {
    const page = async (path: string) => (await fetch(bench.url + path)).text();
    let post = await formPoster(bench.url);
    await post("/demo/piece", { piece: "ship-signet", key: "one" });
    await post("/bench/typed-readings", { role: "dry", reading: "11.7731", unit: "g" });
    await post("/bench/typed-readings", { role: "immersed", reading: "10.6392", unit: "g" });
    await post("/bench/water", { celsius: "21.4" });
    expect((await post("/bench/record", {})).status).toBe(303);
    expect(await page("")).toContain("what lies behind MQ-108 is silver 925 under gilding");
    expect(await page("")).toContain("4 more invented pieces");
    expect(await page("records")).toContain("MQ-108");

    expect((await post("/settings/demo-clearing", {})).status).toBe(303);
    const address = async () => (await fetch(bench.url).catch(() => undefined))?.url;
    await expect.poll(address, { timeout: 15_000 }).toBe(`${bench.url}first-start`);
    post = await formPoster(bench.url);
    expect((await post("/first-start", { method: "hung", source: "typed", metal: "gold" })).status).toBe(303);
    const [desk, records, entries] = await Promise.all([page(""), page("records"), page("records.jsonl")]);
    expect(desk).toContain("New piece");
    for (const text of [desk, records, entries]) expect(text).not.toMatch(/MQ-1|demonstration|Merrowhaven/i);
    expect(readdirSync(bench.dataFolder).filter((name) => name.startsWith("demo-set-aside-"))).toHaveLength(
      1,
    );
  } finally {
    await bench.stop();
  }
});
