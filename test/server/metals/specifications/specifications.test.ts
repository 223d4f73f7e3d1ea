import { expect, test } from "vitest";
import { isMetalId, metal } from "../../../../server/metals/library.ts";
import { compareWith } from "../../../../server/metals/specifications/comparison.ts";
import { checkFineMass } from "../../../../server/metals/specifications/fine-mass-check.ts";
import {
  readOwnSpecifications,
  specificationsOf,
  writeOwnSpecifications,
} from "../../../../server/metals/specifications/own-specifications.ts";
import { effectiveThicknessMm } from "../../../../server/metals/specifications/specification.ts";
import { starterSet } from "../../../../server/metals/specifications/starter-set.ts";
import { refusalOf } from "../../../refusal-of.ts";

const spec = (id: string) => starterSet.find((s) => s.id === id)!;

test("every starter specification has a source, a known metal and an id of its own", () => {
  expect(new Set(starterSet.map((s) => s.id)).size).toBe(starterSet.length);
  for (const s of starterSet) {
    expect(s.source.length, s.id).toBeGreaterThan(20);
    expect(isMetalId(s.metal), s.id).toBe(true);
  }
});

test("masses follow from the laws' own definitions", () => {
  // sovereign: 20 troy pounds of standard gold make 934½ pieces (Coinage Act 1870: 123.27447 grains; from memory)
  expect(spec("gb-sovereign").massG).toBeCloseTo(123.27447 * 0.06479891, 4);
  // 20 mark: 139½ pieces of 10 mark … a pound of 500 g fine gold, so 1000/139.5/0.9 g (law of 4 December 1871)
  expect(spec("de-20-mark").massG).toBeCloseTo(1000 / 139.5 / 0.9, 4);
  // 20 francs: 155 pieces from a kilogram of 900 gold (law of 7 germinal an XI, from memory)
  expect(spec("union-20-francs").massG).toBeCloseTo(1000 / 155, 4);
  // vereinsthaler: 30 from a pound of 500 g fine silver at 900
  expect(spec("de-vereinsthaler").massG).toBeCloseTo(500 / 30 / 0.9, 4);
  // 20 kroner: 124 from a kilogram of fine gold at 900
  expect(spec("nordic-20-kroner").massG).toBeCloseTo(1000 / 124 / 0.9, 4);
});

test("the rim of a real sovereign is thicker than an even disc of its metal", () => {
  const s = spec("gb-sovereign");
  const even = effectiveThicknessMm(s.massG, metal(s.metal).densityGPerCm3.nominal, s.diameterMm!);
  expect(even).toBeCloseTo(1.2, 1);
  expect(even).toBeLessThan(s.thicknessMm!);
});

test("a sovereign of full mass and size is within, a worn one is said to be worn, a brass one is not", () => {
  const s = spec("gb-sovereign");
  const states = (massG: number, diameterMm: number, thicknessMm: number) =>
    compareWith(s, {
      massG,
      uMassG: 0.001,
      diameterMm,
      uDiameterMm: 0.02,
      thicknessMm,
      uThicknessMm: 0.02,
    }).map((row) => row.state);
  expect(states(7.985, 22.05, 1.52)).toEqual(["within", "within", "within"]);
  expect(states(7.95, 22.05, 1.52)[0]).toBe("worn");
  expect(states(7.8, 22.05, 1.52)[0]).toBe("outside");
  expect(states(7.985, 23.5, 2.4)).toEqual(["within", "outside", "outside"]);
});

test("a kitchen scale cannot say whether a mass is within 13 mg", () => {
  const [mass] = compareWith(spec("gb-sovereign"), { massG: 7.99, uMassG: 0.01 });
  expect(mass!.state).toBe("undecided");
});

test("a fine mass that is not mass times fineness is refused with both numbers", () => {
  // Coinage Act 1870: 7.98805 g of 11/12 gold holds 7.32238 g
  expect(checkFineMass("7.98805", "916.66", "7.3223")).toBeCloseTo(7.32233, 4);
  const refused = refusalOf(() => checkFineMass("31.10", "916.7", "31.10"));
  expect(refused).toMatchObject({
    code: "specification.fine.contradicts",
    params: { stated_g: { decimal: "31.10" } },
  });
  expect(refused.params.computed_g).toBeCloseTo(28.50937, 5);
  expect(refusalOf(() => checkFineMass("33.93", "0.9167", "31.1")).code).toBe(
    "specification.fine.contradicts",
  );
  expect(refusalOf(() => checkFineMass("33.93", "9167", "31.1")).code).toBe("specification.fine.above-1000");
});

test("own specifications survive export and import, and a wrong fine mass or metal is refused with its place", () => {
  const medal = {
    id: "own-harbour-medal",
    name: "Harbour medal",
    metal: "ag-925",
    mass_g: "24.00",
    fineness_permille: "925",
    fine_mass_g: "22.20",
    diameter_mm: 36,
    source: "maker's ledger, invented for this test",
  };
  const file = (one: object) =>
    JSON.stringify({ underhook_specifications: 1, version: 1, specifications: [one] });
  const own = readOwnSpecifications(file(medal));
  expect(readOwnSpecifications(writeOwnSpecifications(own))).toEqual(own);
  expect(specificationsOf(own)[0]).toMatchObject({ massG: 24, finenessPermille: 925, diameterMm: 36 });
  const faults = (change: object) =>
    refusalOf(() => readOwnSpecifications(file({ ...medal, ...change }))).params.faults;
  const fault = (message: object) => ({
    code: "metal.file.fault",
    params: { place: "specifications.0", message },
  });
  expect(faults({ fine_mass_g: "24.00" })).toMatchObject([fault({ code: "specification.fine.contradicts" })]);
  expect(faults({ metal: "ag-92" })).toMatchObject([
    fault({ code: "metal.refusal.unknown", params: { id: "ag-92" } }),
  ]);
  expect(faults({ weight: 1 })).toEqual([
    fault({ code: "metal.file.unknown-key", params: { keys: ["weight"] } }),
  ]);
});
