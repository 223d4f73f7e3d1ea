import { afterEach, beforeEach, expect, test } from "vitest";
import { builtIn } from "../../../server/metals/library.ts";
import { nearIds } from "../../../server/metals/near-ids.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const own = {
  name: "Harbour medal",
  metal: "au-916",
  mass: "7,9881",
  fineness: "916,7",
  fine: "7,3227",
  source: "invented for the test",
};

test("an own specification is added and can then be chosen; a fine mass that fits is taken", async () => {
  expect((await at.post("/specifications", own)).statusCode).toBe(303);
  const text = await textOf(at, "/specifications");
  expect(text).toContain("Harbour medal");
  expect(text).toContain("Coinage Act 1870");
  expect(await textOf(at, "/specifications.json")).toContain('"fine_mass_g": "7.3227"');
});

test("mass × fineness that is not the stated fine mass is refused with both numbers, and nothing typed is lost", async () => {
  const answer = await at.post("/specifications", { ...own, fine: "7,9881" });
  expect(answer.statusCode).toBe(422);
  const text = wordsOf(answer.body);
  // 7.9881 g × 0.9167 = 7.322691 g
  expect(text).toContain("7.322691 g of fine metal, but 7.9881 g is stated");
  expect(answer.body).toContain('value="7,9881"');
  expect(await textOf(at, "/specifications")).not.toContain("Harbour medal");
});

test("own specifications are taken over as a file; a fault, a mismatch or an older version changes nothing", async () => {
  await at.post("/specifications", own);
  const kept = (await at.app.inject({ url: "/specifications.json", headers: { host } })).body;
  const send = (text: string) => at.send("/specifications/import", { name: "json-file", text });
  const older = kept.replace("Harbour medal", "Harbour token");
  expect(wordsOf((await send(older)).body)).toMatch(/differs from version \d+ held here/);
  const newer = kept.replace(/"version": \d+/, '"version": 9');
  const wrong = newer.replace('"7.3227"', '"7.9881"');
  const refused = await send(wrong);
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toMatch(/specifications\.0: .*7\.322691 g of fine metal, but 7\.9881 g/);
  expect(wordsOf((await send(newer.replace("au-916", "au-nothing"))).body)).toContain(
    messageText("metal.refusal.unknown", {
      id: "au-nothing",
      library: builtIn.version,
      near: nearIds(
        "au-nothing",
        builtIn.metals.map(({ id }) => id),
      ),
    }),
  );
  const renamed = await send(newer.replace("Harbour medal", "Harbour token"));
  expect(wordsOf(renamed.body)).toContain(
    messageText("own.renamed", { id: "own-harbour-medal", held: "Harbour medal", name: "Harbour token" }),
  );
  const without = await send('{"underhook_specifications":1,"version":9,"specifications":[]}');
  expect(wordsOf(without.body)).toContain(messageText("specification.missing", { names: ["Harbour medal"] }));
  expect((await send(newer.replace("invented", "made up"))).statusCode).toBe(303);
  expect(await textOf(at, "/specifications")).toContain("made up for the test");
});

test("one that stands already is not replaced by another of its name, and wear cannot add mass", async () => {
  await at.post("/specifications", own);
  const again = await at.post("/specifications", { ...own, mass: "7,5", fine: "" });
  expect(again.statusCode).toBe(422);
  expect(await textOf(at, "/specifications.json")).toContain('"mass_g": "7.9881"');
  const worn = await at.post("/specifications", { ...own, name: "Other medal", leastCurrent: "8" });
  expect(worn.statusCode).toBe(422);
  const right = await at.post("/specifications", { ...own, name: "Other medal", leastCurrent: "7,9" });
  expect(right.statusCode).toBe(303);
  expect(await textOf(at, "/specifications.json")).toContain('"least_current_g": 7.9');
});

test("a fineness in per cent, or of another metal, is refused", async () => {
  for (const fineness of ["91,67", "750"]) {
    const answer = await at.post("/specifications", { ...own, fineness, fine: "" });
    expect(answer.statusCode).toBe(422);
    expect(wordsOf(answer.body)).toContain("Harbour medal is stated with");
  }
  expect(await textOf(at, "/specifications.json")).not.toContain("Harbour medal");
});

test("the fineness of a typed density has its freedom in it: 14.00 leaves 549 to 672 ‰ and more", async () => {
  const text = await textOf(at, "/plan/fineness?density=14,00&uDensity=0.01&metal=gold&colour=any");
  // volume-additive table: at 14 g/cm³ all silver gives 549 ‰, all copper 672 ‰ (computed by hand)
  const [, low, high] = /its fineness lies between (\d+) and (\d+) ‰/.exec(text) ?? [];
  expect(Number(low)).toBeLessThan(552);
  expect(Number(high)).toBeGreaterThan(669);
});

test("gold in quartz is solved from one weighing, and impossible densities are refused with both", async () => {
  const asked =
    "question=masses&massG=41.30&density=3.9&uDensity=0.05&first=18.5&uFirst=0.5&second=2.65&uSecond=0.01";
  // by hand: V = 41.3/3.9 = 10.590; m = 18.5 (41.3 − 10.590·2.65)/(18.5 − 2.65) = 15.45 g
  expect(await textOf(at, `/plan/two-bodies?${asked}`)).toMatch(/15.4\d* ± [\d.]+ g of the first body/);
  expect(await textOf(at, `/plan/two-bodies?${asked.replace("density=3.9", "density=1.2")}`)).toMatch(
    /1.200 g\/cm³, outside 2.65 to 18.5 g\/cm³/,
  );
});

test("an alloy in quartz is solved over everything its claim allows, with the fine metal that follows", async () => {
  const asked = "question=masses&massG=41.30&density=3.9&uDensity=0.05&alloy=au-750&second=2.65&uSecond=0.01";
  const { low, high } = builtIn.metal("au-750").densityGPerCm3;
  // by hand: m = ρ₁ (M − V ρ₂)/(ρ₁ − ρ₂), at both ends of the band and of the density ± 1.69 u: between ends that lie apart
  // 95.45 % are left out on one side only
  const grams = (rho: number, whole: number) => (rho * (41.3 - (41.3 / whole) * 2.65)) / (rho - 2.65);
  const ends = [low, high].flatMap((rho) =>
    [3.9 - 1.69 * 0.05, 3.9 + 1.69 * 0.05].map((whole) => grams(rho, whole)),
  );
  const text = await textOf(at, `/plan/two-bodies?${asked}`);
  const [, from, to] = /([\d.]+) to ([\d.]+) g of gold 750/.exec(text) ?? [];
  expect(Math.abs(Number(from) - Math.min(...ends))).toBeLessThan(0.1);
  expect(Math.abs(Number(to) - Math.max(...ends))).toBeLessThan(0.1);
  const [, fine] = /Fine mass \(Gold\) ([\d.]+) to/.exec(text) ?? [];
  expect(Number(fine) / Number(from)).toBeCloseTo(0.75, 2);
});
