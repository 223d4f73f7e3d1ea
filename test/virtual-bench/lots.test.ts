import { describe, expect, test } from "vitest";
import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { familyFineness } from "../../server/metals/fineness/family-fineness.ts";
import type { FineParts } from "../../server/metals/fineness/fine-parts.ts";
import { fineSum } from "../../server/metals/fineness/fine-sum.ts";
import { builtIn } from "../../server/metals/library.ts";
import { longRun, seed, whole } from "../setup/long-run.ts";
import { type Chance, chances, normalBelow } from "./chance.ts";
import { alloyDensity } from "./stamped-alloys.ts";

/** The band that the coverage of a lot must fall into where nothing but errors decides. */
const band = { from: 0.945, to: 0.97 };
const lots = longRun(1000);
/** By day a hundred lots tell a share no closer than three of these. */
const byDay = whole ? 0 : 3 * Math.sqrt((0.0455 * 0.9545) / lots);

/** Standard uncertainties that the data files state: densities of the metals, g/cm³, and excess terms, cm³/g. */
const u = { Ag: 0.0087, Cu: 0.0225, Zn: 0.0144, AgCu: 0.0005, AgZn: 0.003, CuZn: 0.0015 };
const gPerCm3 = { Ag: 10.5, Cu: 8.94, Zn: 7.14 };

/** By how much the volume of this silver may truly lie off any law, cm³/g: the same for all pieces of the alloy. */
function lawError({ Ag, Cu, Zn }: Record<"Ag" | "Cu" | "Zn", number>, chance: Chance): number {
  const metals = (["Ag", "Cu", "Zn"] as const).map(
    (of) => ({ Ag, Cu, Zn })[of] * (chance.normal(`density of ${of}`, 0, u[of]) / gPerCm3[of] ** 2),
  );
  const pairs = [
    Ag * Cu * chance.normal("Ag-Cu", 0, u.AgCu),
    Ag * Zn * chance.normal("Ag-Zn", 0, u.AgZn),
    Cu * Zn * chance.normal("Cu-Zn", 0, u.CuZn),
  ];
  return [...metals, ...pairs].reduce((sum, one) => sum + one, 0);
}

interface Lot {
  name: string;
  pieces: number;
  grams: readonly [number, number];
  /** standard deviation of one displaced mass on that scale, g */
  scatterG: number;
  /** zinc of a piece, share of the whole */
  zinc(chance: Chance, lot: Chance): number;
}

/** Relative standard uncertainty of the water, shared by a whole lot. */
const uWater = 0.0002;

function measured(value: number, uValue: number): MeasuredDensity {
  return {
    valueGPerCm3: value,
    uGPerCm3: uValue,
    intervalGPerCm3: [value - 2 * uValue, value + 2 * uValue],
    confidence: 0.9545,
    intervalFrom: "gum",
    probabilityBelow: (x) => normalBelow((x - value) / uValue),
  };
}

/** One lot of sterling weighed piece by piece in one water: what is stated of its silver, and what it truly holds. */
function weighed({ pieces, grams, scatterG, zinc }: Lot, place: number, lot: Chance) {
  const claimed = builtIn.metal("ag-925");
  let truthG = 0;
  const parts: FineParts[] = [];
  for (const chance of chances(seed + 7919 * (place + 1), pieces)) {
    const zn = zinc(chance, lot);
    const alloy = { Ag: 0.925, Zn: zn, Cu: 0.075 - zn };
    const massG = chance.between("mass", ...grams);
    const trueVolume = massG * (1 / alloyDensity(alloy) + lawError(alloy, lot));
    const volume = trueVolume * (1 + lot.normal("water", 0, uWater)) + chance.normal("scatter", 0, scatterG);
    const own = scatterG / volume;
    const value = massG / volume;
    const piece = {
      measured: measured(value, value * Math.hypot(own, uWater)),
      celsius: 20,
      massG,
      uMassG: 0,
      commonShare: uWater ** 2 / (own ** 2 + uWater ** 2),
    };
    // a piece whose claim is excluded, now and then a genuine one, counts for nothing
    const { low, high } = claimed.densityGPerCm3;
    const [least, most] = piece.measured.intervalGPerCm3;
    if (most < low || least > high) continue;
    truthG += massG * 0.925;
    parts.push(familyFineness(claimed, piece, { confidence: 0.9545, library: builtIn })!.parts);
  }
  expect(parts.length).toBeGreaterThan(0.95 * pieces);
  return { truthG, ...fineSum(parts, 0.9545) };
}

const refiners = [
  { name: "200 pieces of 10 to 40 g at 1 mg", pieces: 200, grams: [10, 40], scatterG: 0.0015 },
  { name: "200 pieces of 10 to 40 g at 0.01 g", pieces: 200, grams: [10, 40], scatterG: 0.012 },
  { name: "60 pieces of 2 to 10 g at 0.01 g", pieces: 60, grams: [2, 10], scatterG: 0.012 },
] as const;

function shown(name: string, lotsOf: ReturnType<typeof weighed>[]) {
  const count = (of: (one: ReturnType<typeof weighed>) => boolean) =>
    lotsOf.filter(of).length / lotsOf.length;
  const covered = count(({ truthG, lowG, highG }) => lowG <= truthG && truthG <= highG);
  const mean = (of: (one: ReturnType<typeof weighed>) => number) =>
    lotsOf.reduce((sum, one) => sum + of(one), 0) / lotsOf.length;
  const bias = mean(({ truthG, expectedG }) => expectedG / truthG - 1);
  const width = mean(({ truthG, lowG, highG }) => (highG - lowG) / truthG);
  if (whole)
    console.log(
      `${name}: covered ${(100 * covered).toFixed(1)} %, expected off by ${(100 * bias).toFixed(2)} %, width ${(100 * width).toFixed(1)} %`,
    );
  return { covered, bias };
}

describe("the fine mass of a lot of sterling", () => {
  test.each(refiners)(
    "$name, copper alone beside the silver: covered as stated",
    (of) => {
      const lot: Lot = { ...of, zinc: () => 0 };
      const all = chances(seed, lots).map((chance, place) => weighed(lot, place, chance));
      const { covered, bias } = shown(`${of.name}, copper`, all);
      expect(covered).toBeGreaterThanOrEqual(band.from - byDay);
      // a coarse scale covers more: genuine pieces read too dense are excluded and their chance is missing in the sum
      if (of.scatterG < 0.005) expect(covered).toBeLessThanOrEqual(band.to + byDay);
      expect(Math.abs(bias)).toBeLessThan(0.001);
    },
    600_000,
  );

  test.each(refiners)(
    "$name, 0 to 5 % of zinc in each: covered, and right on the whole",
    (of) => {
      const lot: Lot = { ...of, zinc: (chance) => chance.between("zinc", 0, 0.05) };
      const all = chances(seed + 1, lots).map((chance, place) => weighed(lot, place, chance));
      const { covered, bias } = shown(`${of.name}, zinc`, all);
      expect(covered).toBeGreaterThanOrEqual(band.from - byDay);
      expect(Math.abs(bias)).toBeLessThan(0.001);
    },
    600_000,
  );
});
