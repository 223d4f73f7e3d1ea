import { expect, test } from "vitest";
import { conductivityAt } from "../../../../server/conformity/evidence/appearance.ts";
import type { Evidence } from "../../../../server/conformity/evidence/evidence.ts";
import { excludedBy } from "../../../../server/conformity/evidence/exclusion-by-test.ts";
import { outlineCheck } from "../../../../server/conformity/evidence/outline-and-displacement.ts";
import { soundSpeed } from "../../../../server/conformity/evidence/sound-speed.ts";
import { soundByVolumes, soundThrough } from "../../../../server/conformity/sound-through.ts";
import { metal, metals } from "../../../../server/metals/library.ts";
import { builtInWorth } from "../../../../server/metals/worth-table.ts";
import { normally } from "../normally.ts";
import { left, stands } from "../stands.ts";

const coil = (percentIacs: number, celsius = 20): Evidence => ({
  kind: "conductivity",
  percentIacs,
  uPercentIacs: 1,
  celsius,
});
const gauge = (mPerS: number): Evidence => ({ kind: "sound", mPerS, uMPerS: 30 });
const fineGold = normally(19.28, 0.02);

test("a coil that reads 31 % IACS excludes gold and leaves tungsten", () => {
  // programmed-instruction tables 9.1: W 31.4, Au 70
  expect(excludedBy(coil(31), metal("el-w"))).toBeNull();
  expect(excludedBy(coil(31), metal("el-au"))).toMatchObject({
    code: "test.excludes.conductivity",
    params: { low_iacs: 70, percent_iacs: 31 },
  });
  const found = stands(fineGold, "au-999", { evidence: [coil(31)] });
  expect(found.state).toBe("excluded");
  expect(stands(fineGold, "au-999").state).toBe("consistent-not-unique");
});

test("a coil that reads gold leaves the tungsten core, and sound speed takes it out", () => {
  const withCoil = stands(fineGold, "au-999", { evidence: [coil(74)] });
  expect(left(withCoil)).toContain("w-core-au");
  expect(left(withCoil)).not.toContain("w-pure");
  expect(withCoil.nextTests[0]!.test).toBe("sound");
  // ASTM E494 Table X3.1: Au 3240 m/s, W 5460 m/s
  const withBoth = left(stands(fineGold, "au-999", { evidence: [coil(74), gauge(3240)] }));
  expect(withBoth).not.toContain("w-core-au");
  expect(withBoth).not.toContain("core-w-pure-skin-el-au");
});

test("a strong pull on a piece with aluminium's density is a contradiction, and is not averaged", () => {
  const found = stands(normally(2.7, 0.005), "el-al", { evidence: [{ kind: "magnet", shows: "strong" }] });
  expect(found.state).toBe("inconclusive");
  expect(found.evidence.contradictions[0]).toMatchObject({
    code: "test.check.contradict",
    params: { tests: [{ code: "test.name.density" }, { code: "test.name.magnet" }] },
  });
});

test("two tests that exclude each other are named together", () => {
  const { evidence } = stands(fineGold, "au-999", {
    evidence: [
      { kind: "magnet", shows: "strong" },
      { kind: "touch", metal: "gold", permille: { low: 990, high: 1000 } },
      { kind: "scratch", colour: "yellow" },
    ],
  });
  const named = evidence.contradictions.map(({ params }) => JSON.stringify(params?.tests ?? ""));
  expect(named.join(" ")).toContain("test.name.magnet");
});

test("a magnet that slides slowly excludes what conducts badly, and no silver", () => {
  // conductivities: CRC silver 105 % IACS; lead 8.2, tin 15 % IACS (programmed-instruction tables 9.1)
  const drag: Evidence = { kind: "magnet", shows: "drag" };
  for (const id of ["el-pb", "pb-sb6", "el-sn", "nisilver", "w-epoxy"])
    expect(excludedBy(drag, metal(id)), id).not.toBeNull();
  for (const id of ["ag-999", "ag-925", "el-cu", "el-al", "w-core-au"])
    expect(excludedBy(drag, metal(id)), id).toBeNull();
  // nothing felt excludes no good conductor: a thin piece shows little
  expect(excludedBy({ kind: "magnet", shows: "none" }, metal("ag-999"))).toBeNull();
});

test("a colour excludes what cannot look so, unless a skin of it would pay", () => {
  const white: Evidence = { kind: "colour", colour: "white" };
  expect(excludedBy(white, metal("au-8y"))).toMatchObject({ code: "test.excludes.colour" });
  expect(excludedBy(white, metal("ag-900"))).toBeNull();
  // copper under silver, and tungsten under gold, are sold every day
  expect(excludedBy(white, metal("el-cu"))).toBeNull();
  // where silver is worth less than copper, nobody silvers copper
  const cheap = { ...builtInWorth, of: { ...builtInWorth.of, Ag: 0.1 } };
  expect(excludedBy(white, metal("el-cu"), cheap)).toMatchObject({ code: "test.excludes.colour" });
  expect(excludedBy({ kind: "colour", colour: "yellow" }, metal("w-pure"))).toBeNull();
  // where the skin is worn through it no longer hides them
  expect(excludedBy({ kind: "worn", colour: "white" }, metal("el-cu"))).not.toBeNull();
  expect(excludedBy({ kind: "worn", colour: "yellow" }, metal("w-pure"))).not.toBeNull();
});

test("a magnet that does not pull excludes iron out, and leaves the weak tungsten alloys alive", () => {
  const none: Evidence = { kind: "magnet", shows: "none" };
  expect(excludedBy(none, metal("steel-c"))).toMatchObject({ code: "test.excludes.magnet-none" });
  expect(excludedBy(none, metal("steel-plate"))).not.toBeNull();
  // ASTM B777: tungsten alloys with a nickel-copper binder are non-magnetic
  expect(excludedBy(none, metal("wha-95"))).toBeNull();
});

test("warm copper conducts less, and is not excluded for it", () => {
  // IEC 60028: 0.00393 per kelvin, so 92.7 % IACS at 40 °C
  const [low, high] = conductivityAt([100, 100.2], 40);
  expect(low).toBeLessThan(92.7);
  expect(high).toBeGreaterThan(92.7);
  expect(excludedBy(coil(88, 60), metal("el-cu"))).toBeNull();
  expect(excludedBy(coil(88, 20), metal("el-cu"))).not.toBeNull();
});

test("a clear ring excludes lead, with tin or as a core; a dull one excludes nothing and is remarked", () => {
  const clear: Evidence = { kind: "ring", heard: "clear" };
  for (const id of ["pb-sb6", "pb-sn", "el-pb", "pb-core"])
    expect(excludedBy(clear, metal(id)), id).not.toBeNull();
  // bronze with a little lead rings as bells do
  for (const id of ["ag-925", "nisilver-pb", "pewter"]) expect(excludedBy(clear, metal(id)), id).toBeNull();
  const { evidence } = stands(normally(10.36, 0.01), "ag-925", {
    evidence: [{ kind: "ring", heard: "dull" }],
  });
  expect(evidence.excluded).toEqual([]);
  expect(evidence.remarks).toEqual([{ code: "test.check.dull-ring" }]);
});

test("what sees only the skin never excludes a cored piece", () => {
  for (const e of [
    coil(5),
    { kind: "scratch", colour: "red" },
    { kind: "touch", metal: "neither" },
  ] satisfies Evidence[])
    expect(excludedBy(e, metal("w-core-au")), e.kind).toBeNull();
});

test("a fineness family is excluded only when every recipe is", () => {
  const white: Evidence = { kind: "scratch", colour: "white" };
  expect(excludedBy(white, metal("au-18r"))).not.toBeNull();
  expect(excludedBy(white, metal("au-750"))).toBeNull();
});

test("touch reads 750 gold within the spread of the needles", () => {
  const touch: Evidence = { kind: "touch", metal: "gold", permille: { low: 740, high: 760 } };
  expect(excludedBy(touch, metal("au-750"))).toBeNull();
  expect(excludedBy(touch, metal("au-585"))).toMatchObject({ code: "test.excludes.touch-range" });
  expect(excludedBy(touch, metal("brass-c260"))).toMatchObject({ code: "test.excludes.touch-none" });
});

test("a piece cannot be larger than its outline: 28.3 g in 2.9 cm³ is not brass", () => {
  const outline: Evidence = { kind: "outline", massG: 28.28, outlineCm3: 2.9, uOutlineCm3: 0.03 };
  expect(excludedBy(outline, metal("brass-c260"))).toMatchObject({ code: "test.excludes.outline" });
  expect(excludedBy(outline, metal("ag-925"))).toBeNull();
});

test("a displaced volume larger than the outline is a fault of the weighing, said before any result", () => {
  expect(outlineCheck({ cm3: 2.9, uCm3: 0.02 }, { cm3: 3.1, uCm3: 0.01 })?.code).toBe(
    "test.check.outline-too-small",
  );
  expect(outlineCheck({ cm3: 2.9, uCm3: 0.02 }, { cm3: 2.7, uCm3: 0.01 })).toBeNull();
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

test("no evidence ever brings a metal back that another excluded", () => {
  const one = [coil(74)];
  const more = [...one, gauge(3240), { kind: "magnet", shows: "none" } satisfies Evidence];
  const left = (e: Evidence[]) =>
    new Set(metals.filter((m) => e.every((x) => excludedBy(x, m) === null)).map((m) => m.id));
  const few = left(more);
  for (const id of few) expect(left(one).has(id)).toBe(true);
});

/** % IACS of a resistivity in µΩ·cm at 20 °C: 1.7241 µΩ·cm is 100 % (IEC 60028). */
const iacs = (microohmCm: number) => 172.41 / microohmCm;

test.each([
  // resistivities of elements: CRC Handbook of Chemistry and Physics [from memory]
  ["pt-999", iacs(10.6)],
  ["pd-999", iacs(10.6)],
  ["ag-999", iacs(1.59)],
  // of alloys: Vines and Wise, The Platinum Metals and Their Alloys [from memory]
  ["pt-950ru", iacs(31.5)],
  ["pt-900ir", iacs(24.5)],
  ["pt-950ir", iacs(19)],
  ["pd-950ru", iacs(24)],
  // gold 2.2 µΩ·cm and 0.45 more for each atom in a hundred of copper, Landolt-Börnstein III/15a [from memory]: 4.2 of them
  ["au-986", iacs(2.2 + 0.45 * 4.2)],
  ["au-990-cu", iacs(2.2 + 0.45 * 1.5 + 0.36 * 0.9)],
  // nickel in white gold: some 40 µΩ·cm; palladium: some 25 [both from memory]
  ["au-18wni", iacs(40)],
  ["au-18wpd", iacs(25)],
  // silver 1.6 and 0.64 for each of zinc [from memory]: 8 of them
  ["ag-925-zn", iacs(1.6 + 0.64 * 8)],
  // nickel silver with 10 % nickel, C74500: 9 % IACS [from memory]
  ["nisilver", 9],
] as const)("the conductivity known of %s does not exclude it", (id, percentIacs) => {
  const shown = { kind: "conductivity", percentIacs, uPercentIacs: 0, celsius: 20 } as const;
  expect(excludedBy(shown, metal(id))).toBeNull();
});

test.each(["el-cu", "el-fe", "el-ni", "el-al", "el-mg", "el-pb", "el-pt", "el-zn", "el-nb", "el-w"])(
  "the elastic constants of %s lead to the speed of sound that handbooks print, to 5 %",
  (id) => {
    const printed = metal(id).soundMPerS!;
    const computed = soundThrough({
      ...metal(id),
      made: { code: "imports.title" },
      soundMPerS: null,
      family: "steel",
    });
    expect(computed?.estimated).toBe(true);
    expect(Math.abs(computed!.mPerS / printed - 1)).toBeLessThan(0.05);
  },
);

test("sound is as fast in an alloy as its components make it", () => {
  // 4700 m/s in brass of 30 % zinc, 4760 in nickel silver [CRC; from memory]: the law of volumes is good to 5 %
  const speed = (id: string) => {
    const { composition, densityGPerCm3 } = metal(id);
    const parts = Object.entries(composition).map(([symbol, [share]]) => ({ symbol, share }));
    return soundByVolumes(parts, densityGPerCm3.nominal)!;
  };
  expect(Math.abs(speed("brass-c260") / 4700 - 1)).toBeLessThan(0.05);
  expect(Math.abs(speed("nisilver") / 4760 - 1)).toBeLessThan(0.05);
  // a hundredth of copper hardly changes gold: 3240 m/s, and 990 reads so too
  const gold = { kind: "sound", mPerS: 3250, uMPerS: 20 } as const;
  expect(excludedBy(gold, metal("au-990-cu"))).toBeNull();
  // of 60 parts of gold, 18 of silver and 22 of copper by volume, by hand: √((0.60·202.6 + 0.18·136 + 0.22·197.5)/15.4) km/s
  const fine = soundThrough(metal("au-18y"))!;
  expect(Math.abs(fine.mPerS / 3500 - 1)).toBeLessThan(0.03);
});
