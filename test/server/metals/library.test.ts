import { expect, test } from "vitest";
import { isMetalId, libraryVersion, metal, metals } from "../../../server/metals/library.ts";
import { refusalOf } from "../../refusal-of.ts";

test("platinum is 21.45 g/cm³, not the 21.09 that several tables copy from each other", () => {
  // CRC Handbook 80th ed. (1999): 21.45
  expect(metal("el-pt").densityGPerCm3.nominal).toBe(21.45);
  expect(metal("el-pt").densityGPerCm3.low).toBeGreaterThan(21.3);
});

test("cartridge brass is 8.53 g/cm³ as mill sheets print it, not the 8.3 of a plain mixture", () => {
  expect(metal("brass-c260").densityGPerCm3.nominal).toBe(8.53);
  expect(metal("brass-c260").densityGPerCm3.low).toBeGreaterThan(8.4);
});

test("every id is unique and every band holds its nominal value", () => {
  expect(new Set(metals.map((m) => m.id)).size).toBe(metals.length);
  for (const m of metals) {
    const { low, nominal, high } = m.densityGPerCm3;
    expect(low <= nominal && nominal <= high, m.id).toBe(true);
  }
});

test("nominal mass fractions of every metal add up to one but for the minor elements a standard leaves open", () => {
  // stainless steels carry up to 3 % manganese and silicon that are not listed, leaded nickel silver 0.7 %; families list the union of recipes
  for (const m of metals.filter((one) => !one.recipes)) {
    const total = Object.values(m.composition).reduce((sum, [nominal]) => sum + nominal, 0);
    expect(Math.abs(total - 1), m.id).toBeLessThan(m.family === "steel" ? 0.031 : 0.0075);
  }
});

test("a fineness family's band runs over all its recipes", () => {
  const family = metal("au-750");
  for (const id of family.recipes ?? []) {
    const { low, high } = metal(id).densityGPerCm3;
    expect(low).toBeGreaterThanOrEqual(family.densityGPerCm3.low);
    expect(high).toBeLessThanOrEqual(family.densityGPerCm3.high);
  }
  // plainly added volumes (CRC densities): 75 Au 18 Ni 7 Zn 14.5, 75 Au 25 Pd 16.76
  expect(family.densityGPerCm3.low).toBeLessThan(14.5);
  expect(family.densityGPerCm3.high).toBeGreaterThan(16.76);
});

test("an unknown id is refused with the nearest ids", () => {
  expect(isMetalId("ag-952")).toBe(false);
  const refused = refusalOf(() => metal("ag952"));
  expect(refused).toMatchObject({ code: "metal.refusal.unknown", params: { id: "ag952" } });
  expect(refused.params.near).toContain("ag-925");
  expect(libraryVersion).not.toBe("");
});
