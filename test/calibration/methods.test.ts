import { describe, expect, it } from "vitest";
import { displaced as byRise } from "../../calibration/displaced.ts";
import { driftFit } from "../../calibration/drift.ts";
import { flask } from "../../calibration/flask.ts";
import { hung } from "../../calibration/hung.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { wouldHide } from "../../calibration/pool.ts";
import { seededRandom } from "../../calibration/random.ts";
import type { Lifted, TimedReading } from "../../calibration/series.ts";

const grams = (...readings: string[]) => ({ readings, unit: "g" as const });

/** A piece of 31.1035 g that displaces 2.9600 g at a 0.1 mg balance; invented. */
const piece: Measurement = {
  dry: grams("31.1035"),
  weighing: hung(grams("28.1435")),
  liquid: { kind: "water", temperature: { celsius: 21.4, uCelsius: 0.06 }, purity: "distilled" },
  air: { kind: "stated", kgPerM3: 1.19, uKgPerM3: 0.017 },
  balance: { readabilityGrams: 0.0001, repeatabilityGrams: 0.0002, linearityGrams: 0 },
  hanger: { wireMillimetres: 0 },
  bubbleAllowanceMg: 0,
  pieces: 1,
  confidence: 0.9545,
};
const density = measure(piece).gPerCm3;

describe("as the standards write it", () => {
  const { liquidGPerCm3, airKgPerM3 } = measure(piece);
  const [liquid, air] = [liquidGPerCm3!, airKgPerM3 / 1000];

  it("hung: the density of a weight by its indications in air and in liquid", () => {
    // OIML R 111-1:2004, B.7, method B: ρ = (I_a·ρ_l − I_l·ρ_a)/(I_a − I_l) [clause from memory]
    expect(density).toBeCloseTo((31.1035 * liquid - 28.1435 * air) / (31.1035 - 28.1435), 9);
  });

  it("displaced: the liquid carries what the piece loses, so the rise is the loss of the hung piece", () => {
    // ISO 1183-1, method A, has m_a − m_l for it [from memory]
    expect(measure({ ...piece, weighing: byRise(grams("2.9600")) }).gPerCm3).toBeCloseTo(density, 9);
  });

  it("flask: the liquid that fills it alone less the liquid that fills it beside the piece", () => {
    // ISO 1183-1, method B: ρ = m_s·ρ_l/(m_1 − m_2), m_1 and m_2 these masses of liquid [from memory]; an empty flask of 20 g
    const [m1, m2] = [53.211, 53.211 - 2.96];
    const filled = flask({
      full: grams((20 + m1).toFixed(4)),
      withPiece: grams((20 + m2 + 31.1035).toFixed(4)),
    });
    const { relativeDensity } = measure({ ...piece, weighing: filled });
    expect(relativeDensity.apparent * liquid).toBeCloseTo((31.1035 * liquid) / (m1 - m2), 9);
  });
});

describe("displaced, with a vessel that evaporates", () => {
  // evaporation 5 mg/min, rise 1.6120 g, film of 28 mg on the piece (a 10 µm film on a 39 mm coin)
  const rate = -0.005 / 60;
  const looks = (pattern: string, atSeconds: number[], extra: (k: number) => number) =>
    [...pattern].map((kind, k): TimedReading => {
      const shown = (0.01 + rate * atSeconds[k]! + (kind === "r" ? 1.612 : 0) + extra(k)).toFixed(6);
      return kind === "r"
        ? { atSeconds: atSeconds[k]!, reading: shown }
        : { atSeconds: atSeconds[k]!, zero: shown };
    });
  const fitted = (timed: TimedReading[], lifted: Lifted) => driftFit({ timed, lifted, unit: "g" });

  it("finds load and drift from zero, reading, zero where lifting leaves the zero alone", () => {
    const found = fitted(
      looks("zrz", [0, 40, 90], () => 0),
      "kept",
    );
    expect(found.grams).toBeCloseTo(1.612, 5);
    expect(found.gramsPerSecond).toBeCloseTo(rate, 7);
    expect(found.dof).toBe(0);
  });

  it("does not take the film that a wet piece carries away and brings back for displaced mass", () => {
    const timed = looks("zzrrzrrz", [0, 30, 60, 90, 120, 150, 180, 210], (k) =>
      k === 4 || k === 7 ? -0.028 : 0,
    );
    expect(fitted(timed, "wet").grams).toBeCloseTo(1.612, 5);
    expect(fitted(timed, "wet").s).toBeLessThan(1e-5);
    // taken for a dried piece, the film would stand in the result
    expect(Math.abs(fitted(timed, "dried").grams - 1.612)).toBeGreaterThan(0.005);
  });

  it("lets each zero begin a run of its own where the piece is dried between", () => {
    const lost = (k: number) => (k >= 4 ? -0.028 : 0);
    const timed = looks("zzrrzrr", [0, 30, 60, 90, 120, 150, 180], lost);
    expect(fitted(timed, "dried").grams).toBeCloseTo(1.612, 5);
  });

  it("says which look is missing when drift and load cannot be told apart", () => {
    const timed = looks("zrz", [0, 40, 90], (k) => (k === 2 ? -0.028 : 0));
    expect(() => fitted(timed, "wet")).toThrow(
      expect.objectContaining({
        code: "measurement.drift-not-told",
        params: expect.objectContaining({ looks: 3 }),
      }),
    );
    expect(() =>
      fitted(
        looks("zzz", [0, 1, 2], () => 0),
        "kept",
      ),
    ).toThrow(
      expect.objectContaining({
        code: "measurement.timed-needs-both",
        params: expect.objectContaining({ zeros: 3, readings: 0 }),
      }),
    );
  });

  it("has the textbook uncertainty: zeros at both ends and readings in the middle average out", () => {
    // symmetric design, drift orthogonal to load: var(load) = s²(1/2 + 1/2)
    expect(
      fitted(
        looks("zrrz", [0, 40, 60, 100], () => 0),
        "kept",
      ).factor,
    ).toBeCloseTo(1, 10);
  });

  it("carries the fit into the density", () => {
    const timed = looks("zzrrzrrz", [0, 30, 60, 90, 120, 150, 180, 210], (k) =>
      k === 4 || k === 7 ? -0.028 : 0,
    );
    const rise = { timed, lifted: "wet", unit: "g" } as const;
    const drifting = measure({ ...piece, weighing: byRise(rise) });
    const still = measure({ ...piece, weighing: byRise(grams("1.6120")) });
    expect(drifting.gPerCm3 / still.gPerCm3).toBeCloseTo(1, 5);
    expect(drifting.budget.map((row) => row.input)).toContain("rise, repeatability about the drift");
  });
});

describe("a zero looked at before and after", () => {
  it("is taken off at its middle and its change stands in the budget", () => {
    const immersed = { ...grams("28.1437"), zeroBefore: "0.0000", zeroAfter: "0.0004" };
    const drifted = measure({ ...piece, weighing: hung(immersed) }, seededRandom(2));
    expect(drifted.gPerCm3).toBeCloseTo(density, 9);
    const row = drifted.budget.find(({ input }) => input === "immersed, zero drift")!;
    expect(row.u).toBeCloseTo(0.0002 / Math.sqrt(3), 12);
    const [low, high] = drifted.monteCarlo!.intervalGPerCm3;
    // the Monte Carlo interval lies about the value, so the zero's sign is right in its model too
    expect(Math.abs((low + high) / 2 - density)).toBeLessThan((high - low) / 100);
  });
});

describe("a hanger weighed in", () => {
  it("comes off both sides by the five-reading bookkeeping", () => {
    // SG = W/[(W_a − S_a) − (W_w − S_w)], S the hanger alone; here with W_a = W + S_a
    const weighedIn = measure({
      ...piece,
      dry: grams("33.0535"),
      weighing: hung(grams("30.0735")),
      hanger: { wireMillimetres: 0, inAir: grams("1.9500"), inLiquid: grams("1.9300") },
    });
    expect(weighedIn.gPerCm3).toBeCloseTo(density, 9);
    expect(weighedIn.uGPerCm3).toBeGreaterThan(measure(piece).uGPerCm3);
  });

  it("reproduces a collector's coin weighed with hanger and wire of 1.95 g, of which 0.01 g is buoyed up", () => {
    // coincommunity.com, topic 126327: 33.11 g dry and 30.12 g immersed, both with hanger: printed SG 10.46
    const coin = measure({
      ...piece,
      dry: grams("33.11"),
      weighing: hung(grams("30.12")),
      hanger: { wireMillimetres: 0, inAir: grams("1.95"), inLiquid: grams("1.94") },
      balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, linearityGrams: 0 },
    });
    expect(coin.relativeDensity.apparent.toFixed(2)).toBe("10.46");
  });
});

describe("known bodies with the piece", () => {
  it("give back the metal's own density when the stone is taken off", () => {
    // 3 g of 15.5 g/cm³ with a 0.5 ct stone of 3.52 g/cm³: weighed together, worked out here from forces
    const [air, liquid] = [1.19e-3, 0.997907];
    const stone = 0.1;
    const metal = 2.9;
    const volume = metal / 15.5 + stone / 3.52;
    const weights = 1 - air / 8;
    const dry = (metal + stone - volume * air) / weights;
    const displaced = (volume * (liquid - air)) / weights;
    const ring: Measurement = {
      ...piece,
      dry: grams(dry.toFixed(9)),
      weighing: byRise(grams(displaced.toFixed(9))),
      liquid: { kind: "stated", name: "water", gPerCm3: liquid, uGPerCm3: 0 },
    };
    expect(measure(ring).gPerCm3).toBeCloseTo((metal + stone) / volume, 6);
    const added = [{ name: "the stone", massGrams: stone, uMassGrams: 0.002, gPerCm3: 3.52, uGPerCm3: 0.01 }];
    const bare = measure({ ...ring, added }, seededRandom(1));
    expect(bare.gPerCm3).toBeCloseTo(15.5, 6);
    expect(bare.massGrams).toBeCloseTo(metal, 7);
    expect(bare.uGPerCm3).toBeGreaterThan(measure(ring).uGPerCm3);
  });
});

describe("other liquids", () => {
  it("take their density from the stated temperature by their expansion", () => {
    // ethanol 0.789 g/cm³ at 20 °C [from memory], cubic expansion 1.08e-3/°C [from memory]
    const liquid = {
      kind: "stated",
      name: "ethanol",
      gPerCm3: 0.789,
      uGPerCm3: 0.0005,
      statedAtCelsius: 20,
      expansionPerCelsius: 1.08e-3,
      temperature: { celsius: 25, uCelsius: 0.2 },
    } as const;
    const result = measure({ ...piece, liquid });
    expect(result.liquidGPerCm3).toBeCloseTo(0.789 * (1 - 5 * 1.08e-3), 9);
    const row = result.budget.find(({ input }) => input === "ethanol temperature")!;
    expect(row.sensitivity / result.relativeDensity.apparent).toBeCloseTo(-0.789 * 1.08e-3, 9);
  });

  it("may be measured with a body of known volume, and the span error then stays", () => {
    const volume = 10.0005;
    // what a body of that volume displaces in the liquid of 0.997907 g/cm³
    const displaced = (volume * (0.997907 - 1.19e-3)) / (1 - 1.19e-3 / 8);
    const liquid = {
      kind: "measured",
      name: "bath",
      body: { cm3: volume, uCm3: 0.0005, rise: grams(displaced.toFixed(7)) },
      temperature: { celsius: 21.4, uCelsius: 0.06 },
    } as const;
    const result = measure({ ...piece, liquid, balance: { ...piece.balance, spanU: 1e-4 } });
    expect(result.liquidGPerCm3).toBeCloseTo(0.997907, 7);
    const share = result.budget.find(({ input }) => input === "balance span")!.contributionGPerCm3;
    expect(share / result.gPerCm3).toBeCloseTo(1e-4, 6);
  });
});

describe("a flask filled warmer", () => {
  it("is corrected by 5 mg per °C for 25 g of water at 20 °C", () => {
    // 25 g · 2.07e-4/°C = 5.2 mg/°C, less the glass's own expansion of 5 %
    const fillings = { full: grams("73.2110"), withPiece: grams("101.3545") };
    const cool = measure({ ...piece, weighing: flask(fillings) });
    const warm = measure({
      ...piece,
      weighing: flask({ ...fillings, liquidGrams: 25, warmerCelsius: 1, uWarmerCelsius: 0.1 }),
    });
    const moved = warm.displacedGrams - cool.displacedGrams;
    // 2.17e-4 at 21.4 °C
    expect(moved).toBeGreaterThan(0.0049);
    expect(moved).toBeLessThan(0.0053);
    expect(warm.uGPerCm3).toBeGreaterThan(cool.uGPerCm3);
  });
});

describe("several identical pieces", () => {
  it("hide as many odd ones as their mean's uncertainty allows", () => {
    // ten of 10.49 with one of 8.5: 1/ρ averages to 10.250, 2.3 % low
    const measured = { gPerCm3: 10.49, expandedGPerCm3: 0.23 };
    expect(wouldHide(measured, 10, 8.5)).toBe(0);
    expect(wouldHide({ ...measured, expandedGPerCm3: 0.25 }, 10, 8.5)).toBe(1);
    expect(wouldHide({ ...measured, expandedGPerCm3: 5 }, 4, 8.5)).toBe(3);
  });

  it("are told as a mean", () => {
    expect(measure({ ...piece, pieces: 5 }).warnings).toContainEqual(
      expect.objectContaining({
        code: "measurement.pool",
        params: expect.objectContaining({ pieces: 5, hidden: 0 }),
      }),
    );
  });
});

describe("a multi-range balance", () => {
  it("rounds dry and immersed readings by their own steps", () => {
    const result = measure({ ...piece, balance: { ...piece.balance, immersedReadabilityGrams: 0.01 } });
    const u = (name: string) => result.budget.find(({ input }) => input === name)!.u;
    expect(u("dry, resolution at load")).toBeCloseTo(0.0001 / Math.sqrt(12), 12);
    expect(u("immersed, resolution at load")).toBeCloseTo(0.01 / Math.sqrt(12), 12);
  });
});

describe("paired repeats", () => {
  const paired: Measurement = {
    ...piece,
    dry: grams("31.1035", "31.1041", "31.1030", "31.1038", "31.1033"),
    weighing: hung(grams("28.1435", "28.1441", "28.1430", "28.1438", "28.1433")),
    paired: true,
  };

  it("that move together leave the displaced mass certain, and the density with little more", () => {
    const result = measure(paired, seededRandom(1));
    const alone = measure({ ...paired, paired: false }, seededRandom(1));
    // only the roundings are left in D: 2·d/√12 · √... of two roundings on either side
    expect(result.uDisplacedGrams).toBeCloseTo((0.0001 / Math.sqrt(12)) * 2, 8);
    expect(result.uGPerCm3).toBeLessThan(0.4 * alone.uGPerCm3);
    const width = ([low, high]: readonly [number, number]) => high - low;
    expect(width(result.monteCarlo!.intervalGPerCm3)).toBeLessThan(
      0.4 * width(alone.monteCarlo!.intervalGPerCm3),
    );
  });
});
