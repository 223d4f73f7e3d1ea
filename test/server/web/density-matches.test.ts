import { afterEach, beforeEach, expect, test } from "vitest";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const ask = (fields: Record<string, string>) => `/plan/density-matches?${new URLSearchParams(fields)}`;
const silverDisc = {
  density: "10,5",
  uDensity: "0.01",
  claim: "ag-999",
  outline: "disc",
  diameter: "39",
  thickness: "3",
};

test("metals, mixtures and cored pieces that reach a density are listed with shares, skins and how to tell them", async () => {
  const text = await textOf(at, ask(silverDisc));
  expect(text).toContain("From 10.480 to 10.520 g/cm³");
  // tmtpages.com: % Sn = 2076.803/ρ − 183.059 gives 15.1 to 14.4 % tin, so 85 to 86 % lead; both within 0.6 %
  const [, low, high] = /Lead with Tin \(white\) ([\d.]+) – ([\d.]+) %/.exec(text) ?? [];
  expect(Math.abs(Number(low) - (100 - (2076.803 / 10.48 - 183.059)))).toBeLessThan(0.6);
  expect(Math.abs(Number(high) - (100 - (2076.803 / 10.52 - 183.059)))).toBeLessThan(0.6);
  expect(text).toMatch(/Cores under an even skin.*Skin, mm/);
});

test("the skin is worked out for a disc, a bar and a ring of the asker's own", async () => {
  const gold = { density: "17.0", uDensity: "0.01", claim: "au-916" };
  const skin = async (outline: Record<string, string>) => {
    const text = await textOf(at, ask({ ...gold, ...outline }));
    const [, share, from, to] = /Lead under Gold ([\d.]+) – [\d.]+ % ([\d.]+) – ([\d.]+)/.exec(text) ?? [];
    return { share: Number(share), from: Number(from), to: Number(to) };
  };
  // the mean 17.00 ± 0.02 of lead 11.34 and gold 19.3: 71 % of the volume is gold (by hand)
  const disc = await skin({ outline: "disc", diameter: "40", thickness: "4" });
  expect(disc.share).toBeGreaterThan(69);
  expect(disc.share).toBeLessThan(73);
  // by hand: 29 % left of π/4 · 40² · 4 is (40 − 2s)² (4 − 2s)/6400 = 0.29, s = 1.33 mm; ± 0.05 mm for ± 0.02 g/cm³ and the
  // bands of lead and gold, which move the share by 1 %
  expect(disc.from).toBeGreaterThan(1.28);
  expect(disc.to).toBeLessThan(1.38);
  // by hand: (40 − 2s)(20 − 2s)(10 − 2s)/8000 = 0.29, s = 2.70 mm, and the same ± 3 %
  const bar = await skin({ outline: "bar", length: "40", width: "20", height: "10" });
  expect(bar.from).toBeGreaterThan(2.62);
  expect(bar.to).toBeLessThan(2.78);
  const ring = await skin({ outline: "ring", outer: "22", inner: "18", ringWidth: "5" });
  // by hand: (2 − 2s)(5 − 2s)/10 = 0.29, s = 0.615 mm
  expect(ring.from).toBeGreaterThan(0.59);
  expect(ring.to).toBeLessThan(0.64);
});

test("an impossible outline, an unknown claim and a density that is no number are refused at their fields", async () => {
  const refused = async (change: Record<string, string>) => {
    const answer = await at.app.inject({ url: ask({ ...silverDisc, ...change }), headers: { host } });
    expect(answer.statusCode).toBe(422);
    return wordsOf(answer.body);
  };
  expect(await refused({ outline: "ring", outer: "18", inner: "22", ringWidth: "5" })).toContain(
    messageText("composite.refusal.ring", { inner_mm: 22, outer_mm: 18 }),
  );
  expect(await refused({ claim: "ag-1001" })).toContain(
    messageText("metal.refusal.not-in-list", { id: "ag-1001" }),
  );
  expect(await refused({ density: "heavy" })).toContain(
    messageText("form.number.not-a-number", { typed: "heavy" }),
  );
});

test("a record leads here with its density, its claim and the disc that was measured", async () => {
  await recorded(at, { id: "bar-1", claim: "au-916", dry: "7.9881", immersed: "7.5327" });
  await at.post("/records/bar-1/evidence", {
    kind: "size",
    "size-specification": "gb-sovereign",
    "size-diameter": "22.05",
    "size-thickness": "1.52",
    "size-within": "0.02",
  });
  const { body } = await at.app.inject({ url: "/records/bar-1/evidence", headers: { host } });
  const href = /href="(\/plan\/density-matches[^"]+)"/.exec(body)?.[1]?.replaceAll("&amp;", "&") ?? "";
  expect(href).toMatch(/claim=au-916&outline=disc&diameter=22.05&thickness=1.52/);
  expect(await textOf(at, href)).toMatch(/Cores under an even skin/);
});
