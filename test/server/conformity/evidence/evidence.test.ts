import { expect, test } from "vitest";
import { type Evidence, evidenceKinds } from "../../../../server/conformity/evidence/evidence.ts";
import { outlineDoubt } from "../../../../server/conformity/evidence/outline-and-displacement.ts";
import { conductivityAt } from "../../../../server/conformity/evidence/ranges.ts";
import { soundSpeed } from "../../../../server/conformity/evidence/sound-speed.ts";
import { strike } from "../../../../server/conformity/evidence/strike.ts";
import { findingWithEvidence } from "../../../../server/conformity/finding-with-evidence.ts";
import { metal, metals } from "../../../../server/metals/library.ts";
import { normally } from "../normally.ts";

const coil = (percentIacs: number, celsius = 20): Evidence => ({
  kind: "conductivity",
  percentIacs,
  uPercentIacs: 1,
  celsius,
});
const gauge = (mPerS: number): Evidence => ({ kind: "sound", mPerS, uMPerS: 30 });
const fineGold = normally(19.28, 0.02);

test("a coil that reads 31 % IACS strikes gold out and leaves tungsten", () => {
  // programmed-instruction tables 9.1: W 31.4, Au 70
  expect(strike(coil(31), metal("el-w"))).toBeNull();
  expect(strike(coil(31), metal("el-au"))).toMatch(/70 to 78 % IACS at 20 °C, the coil reads 31/);
  const finding = findingWithEvidence(fineGold, "au-999", 0.9545, [coil(31)]);
  expect(finding.state).toBe("excluded");
  expect(finding.density.state).toBe("consistent-not-unique");
});

test("a coil that reads gold leaves the tungsten core alive, and sound speed takes it out", () => {
  const withCoil = findingWithEvidence(fineGold, "au-999", 0.9545, [coil(74)]);
  const ids = withCoil.evidence.alive.map((m) => m.id);
  expect(ids).toContain("w-core-au");
  expect(ids).not.toContain("el-w");
  expect(withCoil.evidence.nextTest!.test).toBe("sound");
  // ASTM E494 Table X3.1: Au 3240 m/s, W 5460 m/s
  const withBoth = findingWithEvidence(fineGold, "au-999", 0.9545, [coil(74), gauge(3240)]);
  expect(withBoth.evidence.alive.map((m) => m.id)).not.toContain("w-core-au");
  expect(withBoth.evidence.alive.map((m) => m.id)).not.toContain("core-w-pure-skin-el-au");
});

test("tests not made stay visible as holes", () => {
  const { evidence } = findingWithEvidence(fineGold, "au-999", 0.9545, [coil(74)]);
  expect(evidence.holes.map((h) => h.kind)).toEqual(
    evidenceKinds.map((e) => e.kind).filter((k) => k !== "conductivity"),
  );
});

test("a strong pull on a piece with aluminium's density is a contradiction, and is not averaged", () => {
  const finding = findingWithEvidence(normally(2.7, 0.005), "el-al", 0.9545, [
    { kind: "magnet", shows: "strong" },
  ]);
  expect(finding.state).toBe("inconclusive");
  expect(finding.evidence.contradictions[0]).toMatch(/density and the magnet contradict/);
});

test("two tests that exclude each other are named together", () => {
  const { evidence } = findingWithEvidence(fineGold, "au-999", 0.9545, [
    { kind: "magnet", shows: "strong" },
    { kind: "touch", metal: "gold", permille: { low: 990, high: 1000 } },
    { kind: "scratch", colour: "yellow" },
  ]);
  expect(evidence.contradictions.join(" ")).toMatch(/magnet/);
});

test("a magnet that does not pull strikes iron out, and leaves the weak tungsten alloys alive", () => {
  const none: Evidence = { kind: "magnet", shows: "none" };
  expect(strike(none, metal("steel-c"))).toMatch(/pulled strongly/);
  expect(strike(none, metal("steel-plate"))).not.toBeNull();
  // ASTM B777: tungsten alloys with a nickel-copper binder are non-magnetic
  expect(strike(none, metal("wha-95"))).toBeNull();
});

test("warm copper conducts less, and is not struck out for it", () => {
  // IEC 60028: 0.00393 per kelvin, so 92.7 % IACS at 40 °C
  const [low, high] = conductivityAt([100, 100.2], 40);
  expect(low).toBeLessThan(92.7);
  expect(high).toBeGreaterThan(92.7);
  expect(strike(coil(88, 60), metal("el-cu"))).toBeNull();
  expect(strike(coil(88, 20), metal("el-cu"))).not.toBeNull();
});

test("a clear ring strikes lead out, a dull one strikes nothing and is a doubt", () => {
  const clear: Evidence = { kind: "ring", heard: "clear" };
  expect(strike(clear, metal("pb-sb6"))).not.toBeNull();
  expect(strike(clear, metal("ag-925"))).toBeNull();
  const { evidence } = findingWithEvidence(normally(10.36, 0.01), "ag-925", 0.9545, [
    { kind: "ring", heard: "dull" },
  ]);
  expect(evidence.struck).toEqual([]);
  expect(evidence.doubts[0]).toMatch(/crack/);
});

test("what sees only the skin never strikes a cored piece", () => {
  for (const e of [
    coil(5),
    { kind: "scratch", colour: "red" },
    { kind: "touch", metal: "neither" },
  ] satisfies Evidence[])
    expect(strike(e, metal("w-core-au")), e.kind).toBeNull();
});

test("a fineness family is struck only when every recipe is", () => {
  const white: Evidence = { kind: "scratch", colour: "white" };
  expect(strike(white, metal("au-18r"))).not.toBeNull();
  expect(strike(white, metal("au-750"))).toBeNull();
});

test("touch reads 750 gold within the spread of the needles", () => {
  const touch: Evidence = { kind: "touch", metal: "gold", permille: { low: 740, high: 760 } };
  expect(strike(touch, metal("au-750"))).toBeNull();
  expect(strike(touch, metal("au-585"))).toMatch(/585/);
  expect(strike(touch, metal("brass-c260"))).toMatch(/has none/);
});

test("a piece cannot be larger than its outline: 28.3 g in 2.9 cm³ is not brass", () => {
  const outline: Evidence = { kind: "outline", massG: 28.28, outlineCm3: 2.9, uOutlineCm3: 0.03 };
  expect(strike(outline, metal("brass-c260"))).toMatch(/would not fit/);
  expect(strike(outline, metal("ag-925"))).toBeNull();
});

test("a displaced volume larger than the outline is a fault of the weighing, said before any finding", () => {
  expect(outlineDoubt({ cm3: 2.9, uCm3: 0.02 }, { cm3: 3.1, uCm3: 0.01 })).toMatch(/bubbles/);
  expect(outlineDoubt({ cm3: 2.9, uCm3: 0.02 }, { cm3: 2.7, uCm3: 0.01 })).toBeNull();
});

test("sound speed from thickness and echo time carries both uncertainties", () => {
  // by hand: 2 × 3.00 mm in 1.852 µs is 3240 m/s; 1 % of thickness is 32 m/s
  const echo = { thicknessMm: 3, uThicknessMm: 0.03, microseconds: 1.852, uMicroseconds: 0, paths: 2 };
  const { mPerS, uMPerS } = soundSpeed(echo);
  expect(mPerS).toBeCloseTo(3239.7, 1);
  expect(uMPerS).toBeCloseTo(32.4, 1);
  // ASTM E494 Table X3.1: tungsten 5460 m/s; 2 mm crossed once in 0.3663 µs, both good to 1 %: 77 m/s
  const through = soundSpeed({
    thicknessMm: 2,
    uThicknessMm: 0.02,
    microseconds: 0.3663,
    uMicroseconds: 0.003663,
    paths: 1,
  });
  expect(through.mPerS).toBeCloseTo(5460, 0);
  expect(through.uMPerS / through.mPerS).toBeCloseTo(0.01 * Math.SQRT2, 6);
  expect(() => soundSpeed({ ...echo, thicknessMm: 0 })).toThrow(/Thickness 0/);
});

test("no evidence ever brings a metal back that another struck out", () => {
  const one = [coil(74)];
  const more = [...one, gauge(3240), { kind: "magnet", shows: "none" } satisfies Evidence];
  const left = (e: Evidence[]) =>
    new Set(metals.filter((m) => e.every((x) => strike(x, m) === null)).map((m) => m.id));
  const few = left(more);
  for (const id of few) expect(left(one).has(id)).toBe(true);
});
