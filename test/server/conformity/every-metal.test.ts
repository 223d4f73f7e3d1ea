import fc from "fast-check";
import { expect, test } from "vitest";
import { findingFor } from "../../../server/conformity/finding.ts";
import { metal, metals } from "../../../server/metals/library.ts";
import { normally } from "./normally.ts";

const at = 0.9545;

test("no metal at its own nominal density is ever said to disagree with itself", () => {
  for (const m of metals) {
    const { nominal } = m.densityGPerCm3;
    for (const relative of [1e-4, 1e-3, 1e-2, 5e-2]) {
      const finding = findingFor(normally(nominal, nominal * relative), m.id, at);
      expect(finding.alive, m.id).toContain(m.id);
      expect(finding.state, m.id).not.toBe("excluded");
    }
  }
});

test("a finding that agrees leaves no look-alike, and one that does not says which", () => {
  for (const m of metals) {
    const finding = findingFor(normally(m.densityGPerCm3.nominal, 0.01), m.id, at);
    expect(finding.lookAlikes.length === 0, m.id).toBe(finding.state === "consistent");
    expect(finding.nextTest === null, m.id).toBe(finding.state === "consistent");
  }
});

test("a finer measurement of the same value never brings a metal back", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 2, max: 23, noNaN: true }),
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      fc.double({ min: 0.1, max: 0.99, noNaN: true }),
      (value, u, finer) => {
        const wide = new Set(findingFor(normally(value, u), undefined, at).alive);
        return findingFor(normally(value, u * finer), undefined, at).alive.every((id) => wide.has(id));
      },
    ),
    { numRuns: 60 },
  );
});

test("fine silver has no single look-alike within half a per cent but silver itself, and fine gold tungsten and light platinum alloys", () => {
  const near = (gPerCm3: number) =>
    metals
      .filter((m) => !m.recipes && Math.abs(m.densityGPerCm3.nominal / gPerCm3 - 1) < 0.005)
      .map((m) => Object.entries(m.composition).sort(([, a], [, b]) => b[0] - a[0])[0]![0]);
  expect(new Set(near(10.5))).toEqual(new Set(["Ag"]));
  // platinum 950 with gallium and indium by added volumes: 1/(0.95/21.45 + 0.03/5.91 + 0.015/7.31 + 0.005/8.94) = 19.2
  expect(new Set(near(19.3))).toEqual(new Set(["Au", "W", "Pt"]));
});

test("tungsten 90 to 97 with its binder lies within the bands of 22 carat, and a magnet or sound tells", () => {
  // ASTM B777-15 Table 1: class 1 16.85 to 17.30, class 3 17.75 to 18.35 g/cm³
  expect(metal("wha-90").densityGPerCm3).toMatchObject({ low: 16.85, high: 17.3 });
  expect(metal("wha-95").densityGPerCm3).toMatchObject({ low: 17.75, high: 18.35 });
  const { lookAlikes } = findingFor(normally(17.85, 0.03), "au-916", at);
  const heavy = lookAlikes.find((l) => l.id === "wha-95")!;
  expect(heavy.why).toBe("band");
  expect(heavy.separatedBy.test).toBe("sound");
});
