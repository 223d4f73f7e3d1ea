import { expect, test } from "vitest";
import { candidates } from "../../../../server/metals/composites/candidates.ts";
import { coreAndSkins } from "../../../../server/metals/composites/core-and-skin.ts";
import { skinThickness, volumeInside, volumeOf } from "../../../../server/metals/composites/shape.ts";
import { metal } from "../../../../server/metals/library.ts";
import { refusalOf } from "../../../refusal-of.ts";

const round = { kind: "disc", diameterMm: 39, thicknessMm: 3 } as const;

test("a tungsten core under gold fits fine gold at any thickness of skin", () => {
  const found = coreAndSkins([19.25, 19.32], round).find(
    (p) => p.core.id === "w-pure" && p.skin.id === "el-au",
  )!;
  expect(found.skinShare[0]).toBeLessThan(0.01);
  expect(found.skinShare[1]).toBeGreaterThan(0.99);
});

test("a lead core under silver on a 39 mm round needs a skin that fills its volume", () => {
  const found = coreAndSkins([10.6, 10.7], round).find(
    (p) => p.core.id === "el-pb" && p.skin.id === "el-ag",
  )!;
  const [thin, thick] = found.skinMm!;
  expect(thin).toBeLessThan(thick);
  const share = 1 - volumeInside(round, thin) / volumeOf(round);
  // bisected to a 2²⁴th of half the thickness
  expect(share).toBeCloseTo(found.skinShare[0], 5);
  const density = share * 10.5 + (1 - share) * 11.34;
  // silver's own band is ±0.03 g/cm³ about 10.50, so nominal densities may miss the interval by that much
  expect(density).toBeGreaterThan(10.57);
  expect(density).toBeLessThan(10.73);
});

test("skins of a disc, a bar and a ring are solved on their own geometry", () => {
  const bar = { kind: "bar", lengthMm: 40, widthMm: 20, heightMm: 10 } as const;
  // by hand: a skin of 1 mm leaves 38·18·8 = 5472 of 8000 mm³
  expect(skinThickness(bar, 1 - 5472 / 8000)).toBeCloseTo(1, 5);
  const ring = { kind: "ring", outerMm: 22, innerMm: 18, widthMm: 5 } as const;
  // by hand: a skin of 0.5 mm leaves π/4·(21² − 19²)·4 of π/4·(22² − 18²)·5
  expect(skinThickness(ring, 1 - (80 * 4) / (160 * 5))).toBeCloseTo(0.5, 5);
  expect(skinThickness(round, 1e-9)).toBeLessThan(1e-6);
});

test("an impossible outline is refused with the length that is wrong", () => {
  expect(refusalOf(() => volumeOf({ kind: "disc", diameterMm: 0, thicknessMm: 1 }))).toMatchObject({
    code: "composite.refusal.length",
    params: { mm: 0 },
  });
  expect(refusalOf(() => volumeOf({ kind: "ring", outerMm: 18, innerMm: 22, widthMm: 5 }))).toMatchObject({
    code: "composite.refusal.ring",
    at: "inner",
  });
});

test("answers are ranked: what is likely and pays comes first, and what only a laboratory tells leads", () => {
  const all = candidates([19.25, 19.35], metal("au-999"), round);
  const [first] = all;
  expect(first!.likelihood).toBe("common");
  const cored = all.findIndex((c) => c.id === "core-w-pure-skin-el-au");
  const lead = all.findIndex((c) => c.id === "core-el-pb-skin-el-pt");
  expect(cored).toBeLessThan(12);
  expect(lead).toBeGreaterThan(cored);
  expect(new Set(all.map((c) => c.kind))).toEqual(new Set(["single", "mixture", "core-and-skin"]));
});

test("a skin of the wrong colour is rare, whatever its density", () => {
  const all = candidates([19.25, 19.35], metal("au-999"));
  expect(all.find((c) => c.id === "core-w-pure-skin-el-ni")?.likelihood).toBe("rare");
});
