import { describe, expect, test } from "vitest";
import { benches } from "./benches.ts";
import { type Chance, chances, normalWithin } from "./chance.ts";
import { compute } from "./underhook.ts";
import { airFreeWater, saturationLoss, solidsGain } from "./water.ts";
import { type Method, weigh } from "./weighing.ts";
import type { Bench } from "./world.ts";

/** Nothing errs: every draw stands in the middle of its law. */
const still: Chance = {
  share: () => 0.5,
  between: (_, from, to) => (from + to) / 2,
  normal: (_, mean) => mean,
};

const faultless: Bench = {
  ...benches["0.1 mg"].bench,
  readabilityGrams: 0.0000001,
  bubblesMg: 0,
  evaporatedGrams: 0,
};

describe("water of the virtual bench", () => {
  // IAPWS SR6-08(2011), table 8: 260, 298.15 and 375 K at 0.1 MPa; the last two from memory, all three agreed with
  // python3-iapws 1.5.3
  test.each([
    [260, 997.06836],
    [298.15, 997.047013],
    [375, 957.00971],
  ])("at %s K has the density of the release's table", (kelvin, kgPerM3) => {
    expect(airFreeWater(kelvin - 273.15, 100_000)).toBeCloseTo(kgPerM3, 5);
  });

  // Tanaka et al. 2001, recommended table at whole degrees, four decimals
  test.each([
    [5, 999.9668],
    [10, 999.7027],
    [15, 999.1026],
    [18, 998.5984],
    [20, 998.2067],
    [22, 997.773],
    [25, 997.047],
    [30, 995.6488],
  ])(
    "at %s °C differs from the formula of the measurement code by less than 0.8 ppm, and does differ",
    (celsius, tanaka) => {
      const apart = airFreeWater(celsius) / tanaka - 1;
      expect(Math.abs(apart)).toBeLessThan(0.8e-6);
      expect(apart).not.toBe(0);
    },
  );

  test("loses 2.5 mg a litre when saturated with air at 20 °C and gains 76 mg a litre from 100 mg/L of salts", () => {
    expect(saturationLoss(20)).toBeCloseTo(0.0025, 4); // Bignell 1983: 0.002492
    expect(solidsGain(100)).toBeCloseTo(0.0764, 3);
  });
});

describe("forces of the virtual bench", () => {
  const piece = { grams: 1000, gPerCm3: 10 }; // 100 cm³
  const once = { id: "still", method: "hung" as Method, piece, bench: faultless, repeats: 1, chance: still };
  const shown = (method: Method) => weigh({ ...once, method });

  test("a piece of the density of the weights shows its mass in air", () => {
    const steel = weigh({ ...once, piece: { grams: 500, gPerCm3: 8 } });
    expect(Number(steel.dry.readings[0])).toBeCloseTo(500, 6);
  });

  test("the three ways of weighing see the same displaced mass, that of the water less that of the air", () => {
    const hung = shown("hung");
    const displaced = shown("displaced");
    const { full, with_piece } = shown("flask").flask!;
    const dry = Number(hung.dry.readings[0]);
    const rise = Number(displaced.rise!.readings[0]);
    expect(dry - Number(hung.immersed!.readings[0])).toBeCloseTo(rise, 6);
    expect(Number(full.readings[0]) + dry - Number(with_piece.readings[0])).toBeCloseTo(rise, 6);
    // by hand: 100 cm³ of water of about 998.1 less air of about 1.2 kg/m³, shown by a balance adjusted in that air
    const air = hung.air.density_kg_m3!;
    const water = airFreeWater(20.5) - saturationLoss(20.5) / 2;
    expect(rise).toBeCloseTo((water - air) / 10 / (1 - air / 8000), 6);
  });

  test("a piece weighed without any error comes back through the command line to 1 ppm, by all three ways", async () => {
    const answers = await compute((["hung", "displaced", "flask"] as const).map(shown));
    for (const { density_g_cm3 } of answers) expect(Math.abs(density_g_cm3! / 10 - 1)).toBeLessThan(1e-6);
  });

  test("a span error of 0.2 % is on every reading and gone from the density", async () => {
    const wrongSpan = (to: number): Chance => ({
      ...still,
      normal: (cause, mean) => (cause === "span" ? to : mean),
    });
    const requests = [-0.002, 0.002].map((span) =>
      weigh({ ...once, id: `${span}`, chance: wrongSpan(span) }),
    );
    expect(Number(requests[1]!.dry.readings[0]) / Number(requests[0]!.dry.readings[0])).toBeCloseTo(
      1.002 / 0.998,
      9,
    );
    const [low, high] = await compute(requests);
    expect(high!.density_g_cm3! / low!.density_g_cm3!).toBeCloseTo(1, 8);
  });
});

describe("chance of the virtual bench", () => {
  test("draws have the law they are said to have", () => {
    const drawn = chances(7, 4000);
    const normal = drawn.map((chance) => chance.normal("a cause", 3, 2));
    const mean = normal.reduce((sum, x) => sum + x, 0) / normal.length;
    const variance = normal.reduce((sum, x) => sum + (x - mean) ** 2, 0) / normal.length;
    expect(mean).toBeCloseTo(3, 2);
    expect(Math.sqrt(variance)).toBeCloseTo(2, 2);
    const within = normal.filter((x) => Math.abs(x - 3) <= 4).length / normal.length;
    expect(within).toBeCloseTo(0.9545, 3); // strata leave no more than one draw of doubt at each end
    expect(normalWithin(2)).toBeCloseTo(0.9544997, 6);
  });

  test("two causes are independent of each other", () => {
    const drawn = chances(7, 4000);
    const product = drawn.reduce(
      (sum, chance) => sum + chance.normal("one cause", 0, 1) * chance.normal("another", 0, 1),
      0,
    );
    expect(Math.abs(product / drawn.length)).toBeLessThan(0.05); // three standard errors of a correlation, 1/√4000
  });

  test("the same seed gives the same bench, another one another", () => {
    expect(chances(7, 5).map((chance) => chance.share("x"))).toEqual(
      chances(7, 5).map((chance) => chance.share("x")),
    );
    expect(chances(7, 5)[0]!.share("x")).not.toBe(chances(8, 5)[0]!.share("x"));
  });
});
