import fc from "fast-check";
import { expect, test } from "vitest";
import { causeOf } from "../../../server/conformity/alternative.ts";
import { metal, metals } from "../../../server/metals/library.ts";
import { normally } from "./normally.ts";
import { left, stands } from "./stands.ts";

test("no metal at its own nominal density is ever excluded", () => {
  for (const m of metals) {
    const { nominal } = m.densityGPerCm3;
    for (const relative of [1e-4, 1e-3, 1e-2, 5e-2]) {
      const found = stands(normally(nominal, nominal * relative), m.id);
      expect(left(found), m.id).toContain(m.id);
      expect(found.state, m.id).not.toBe("excluded");
    }
  }
});

test("a claim that is not unique leaves an alternative and a next test", () => {
  for (const m of metals) {
    const found = stands(normally(m.densityGPerCm3.nominal, 0.01), m.id);
    const others = found.notExcluded.filter(({ metal: one }) => one.id !== m.id);
    if (found.state !== "consistent") expect(others.length, m.id).toBeGreaterThan(0);
    expect(found.nextTests.length > 0, m.id).toBe(others.length > 0);
    const counted = others.filter(({ occurrence }) => occurrence !== "rare");
    expect(counted.length === 0, m.id).toBe(found.state === "consistent");
  }
});

test("a finer measurement of the same value never brings a metal back", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 2, max: 23, noNaN: true }),
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      fc.double({ min: 0.1, max: 0.99, noNaN: true }),
      (value, u, finer) => {
        const wide = new Set(
          stands(normally(value, u), undefined).notExcluded.map(({ metal: m }) => thing(m.id)),
        );
        return left(stands(normally(value, u * finer), undefined)).every((id) => wide.has(thing(id)));
      },
    ),
    { numRuns: 60 },
  );
});

/** A recipe stands for its family, which may be left out of a narrower result, and for its second name. */
const thing = (id: string) =>
  metals.find(({ recipes }) => recipes?.includes(id))?.id ?? id.replace(/^el-w$/, "w-pure");

test("fine silver has no single metal within half a per cent but silver itself, and fine gold tungsten and light platinum alloys", () => {
  const near = (gPerCm3: number) =>
    metals
      .filter((m) => !m.recipes && Math.abs(m.densityGPerCm3.nominal / gPerCm3 - 1) < 0.005)
      .map((m) => Object.entries(m.composition).sort(([, a], [, b]) => b[0] - a[0])[0]![0]);
  expect(new Set(near(10.5))).toEqual(new Set(["Ag"]));
  // platinum 950 with gallium and indium by added volumes: 1/(0.95/21.45 + 0.03/5.91 + 0.015/7.31 + 0.005/8.94) = 19.2
  expect(new Set(near(19.3))).toEqual(new Set(["Au", "W", "Pt"]));
});

test("tungsten 90 to 97 with its binder lies within the bands of 22 carat, and a worn place or sound tells", () => {
  // ASTM B777-15 Table 1: class 1 16.85 to 17.30, class 3 17.75 to 18.35 g/cm³
  expect(metal("wha-90").densityGPerCm3).toMatchObject({ low: 16.85, high: 17.3 });
  expect(metal("wha-95").densityGPerCm3).toMatchObject({ low: 17.75, high: 18.35 });
  const { notExcluded } = stands(normally(17.85, 0.03), "au-916");
  const heavy = notExcluded.find((one) => one.metal.id === "wha-95")!;
  expect(causeOf(heavy, metal("au-916"))).toBe("band");
  expect(heavy.beside?.separatedBy?.test).toBe("colour");
});
