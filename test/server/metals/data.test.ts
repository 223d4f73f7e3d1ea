import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { bandByMixture } from "../../../server/metals/band-by-mixture.ts";
import sources from "../../../server/metals/data/sources.json" with { type: "json" };
import steel from "../../../server/metals/data/steel.json" with { type: "json" };
import { finenessFamilies } from "../../../server/metals/fineness-families.ts";
import { metal, metals } from "../../../server/metals/library.ts";
import { figuresOf as listedIn } from "../../../server/metals/list-provenance.ts";
import type { Figure, Metal } from "../../../server/metals/metal.ts";
import { metalsOf } from "../../../server/metals/metal-row.ts";
import type { rules } from "../../../server/metals/provenance.ts";
import { recipes } from "../../../server/metals/recipes.ts";

/** The value of each figure that is known. */
function figuresOf(m: Metal): Partial<Record<Figure, unknown>> {
  const limits = Object.values(m.composition).some(([, low, high]) => low !== null || high !== null);
  const known = {
    composition: m.composition,
    limits: limits || null,
    nominal: m.densityGPerCm3.nominal,
    low: m.densityGPerCm3.low,
    high: m.densityGPerCm3.high,
    expansion: m.expansionPerMillionK,
    magnetism: m.magnetism,
    conductivityLow: m.conductivityIacsPercent?.[0] ?? null,
    conductivityHigh: m.conductivityIacsPercent?.[1] ?? null,
    sound: m.soundMPerS,
    elasticModulus: m.elasticModulusGPa,
    poissonRatio: m.poissonRatio,
    colour: m.colour,
    likelihood: m.likelihood,
  };
  return Object.fromEntries(Object.entries(known).filter(([, value]) => value !== null));
}

describe("the data files", () => {
  test("every known figure of every metal has a provenance, and no other has one", () => {
    for (const m of metals)
      expect(Object.keys(m.provenance).sort(), m.id).toEqual(Object.keys(figuresOf(m)).sort());
  });

  test("no figure is NaN, a band holds its nominal value, a share its limits", () => {
    for (const m of metals) {
      const { low, nominal, high } = m.densityGPerCm3;
      expect(low <= nominal && nominal <= high, m.id).toBe(true);
      expect(
        Object.values(figuresOf(m)).every((value) => !Number.isNaN(value)),
        m.id,
      ).toBe(true);
      for (const [share, least, most] of Object.values(m.composition))
        expect((least ?? share) <= share && share <= (most ?? share), m.id).toBe(true);
    }
  });

  test("every source that is listed is the source of a figure", () => {
    const used = metals.flatMap((m) =>
      [...Object.values(m.provenance), ...m.otherDensities.map(({ provenance }) => provenance)].flatMap(
        (one) => (one.kind === "seen" ? one.sources : []),
      ),
    );
    expect(new Set(used)).toEqual(new Set(Object.keys(sources)));
  });
});

/** One unit of the last decimal given: "computed" figures are rounded as their rows give them. */
const lastPlace = (value: number) => 10 ** -(String(value).split(".")[1]?.length ?? 0);

describe("a figure that is said to be computed comes out of its rule", () => {
  const said = (rule: (typeof rules)[number]) =>
    recipes.flatMap((m) =>
      Object.entries(m.provenance).flatMap(([figure, by]) =>
        by.kind === "computed" && by.rule === rule ? [[m, figure as Figure] as const] : [],
      ),
    );
  const close = (m: Metal, figure: Figure, expected: number) => {
    const value = Number(figuresOf(m)[figure]);
    expect(Math.abs(value - expected), `${m.id} ${figure} ${value} ${expected}`).toBeLessThan(
      lastPlace(value) + 1e-9,
    );
  };

  test("mixture law, whole and as a share of it", () => {
    const factors = {
      "mixture-law": 1,
      "sintered-96-percent": 0.96,
      "sintered-98.5-percent": 0.985,
    } as const;
    for (const [rule, factor] of Object.entries(factors)) {
      const found = said(rule as keyof typeof factors);
      expect(found.length).toBeGreaterThan(3);
      for (const [m, figure] of found) close(m, figure, bandByMixture(m).corrected.nominal * factor);
    }
  });

  test("the middle of a band", () => {
    for (const [m, figure] of said("middle-of-band"))
      close(m, figure, (m.densityGPerCm3.low + m.densityGPerCm3.high) / 2);
  });

  test("figures of the element, and lead-antimony by its printed formula", () => {
    for (const [m, figure] of said("as-its-element")) {
      const [symbol] = Object.entries(m.composition).sort(([, a], [, b]) => b[0] - a[0])[0]!;
      expect(figuresOf(m)[figure], m.id).toBe(figuresOf(metal(`el-${symbol.toLowerCase()}`))[figure]);
    }
    // % Sb = 1636.416/ρ − 144.241 (common practice)
    for (const [m, figure] of said("lead-antimony-formula"))
      close(m, figure, 1636.416 / (100 * m.composition.Sb![0] + 144.241));
  });
});

describe("the list of figures", () => {
  test("says of every figure of the data files where it comes from", () => {
    const folder = new URL("../../../server/metals/data/", import.meta.url);
    const files = readdirSync(folder).filter((file) => file !== "sources.json");
    const all = files.flatMap((file) =>
      listedIn(file, JSON.parse(readFileSync(new URL(file, folder), "utf8"))),
    );
    expect(all.length).toBeGreaterThan(1500);
    expect(all.filter(({ kind }) => kind === null)).toEqual([]);
  });

  test("finds a number that says nothing of itself", () => {
    expect(listedIn("x.json", { rows: [{ id: "a", sound_m_s: 3000 }] })).toMatchObject([
      { place: "rows.a.sound_m_s", value: "3000", kind: null },
    ]);
  });

  test("no shop, forum or supplier is a source", () => {
    for (const source of Object.values(sources)) expect(source).not.toMatch(/\.com|supplier|trade table/i);
  });
});

describe("a data file with a fault is refused with file, row and field", () => {
  const row = steel.metals.find(({ id }) => id === "ss304")!;
  const withRow = (change: object) => () =>
    metalsOf("steel.json", { family: "steel", metals: [{ ...row, ...change }] });
  const { value } = row.nominal_g_cm3;

  test.each([
    ["no provenance", { nominal_g_cm3: { value } }],
    ["two provenances", { nominal_g_cm3: { value, computed: "mixture-law", from_memory: true } }],
    ["an unknown source", { nominal_g_cm3: { value, seen: ["hearsay"] } }],
    ["an unknown rule", { nominal_g_cm3: { value, computed: "guess" } }],
    ["a band without width", { low_g_cm3: row.nominal_g_cm3, high_g_cm3: row.nominal_g_cm3 }],
    ["a nominal outside its band", { nominal_g_cm3: { value: 19, from_memory: true } }],
    ["a value that is no number", { nominal_g_cm3: { value: "15.5", from_memory: true } }],
  ])("%s", (_what, change) => {
    expect(withRow(change)).toThrow(/^server\/metals\/data\/steel\.json: ss304: nominal_g_cm3/);
  });

  test("an unknown field, and a metal without a name", () => {
    expect(withRow({ densty: 1 })).toThrow(/^server\/metals\/data\/steel\.json: ss304: row: .*densty/);
    expect(withRow({ id: "ss305" })).toThrow(/^server\/metals\/data\/steel\.json: ss305: .*"metal\.ss305"/);
  });
});

test("a row alone puts a metal into its fineness family", () => {
  const without = recipes.filter(({ id }) => id !== "au-18wpd");
  const family = (rows: readonly Metal[]) => finenessFamilies(rows).find(({ id }) => id === "au-750")!;
  expect(family(without).densityGPerCm3.high).toBeLessThan(16.3);
  expect(family(without).composition.Pd).toBeUndefined();
  // 75 Au 25 Pd by plainly added volumes (CRC densities): 1/(0.75/19.3 + 0.25/12.02) = 16.76
  expect(family(recipes).densityGPerCm3.high).toBeGreaterThan(16.76);
  expect(family(recipes).recipes).toContain("au-18wpd");
});
