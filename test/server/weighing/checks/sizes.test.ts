import { describe, expect, test } from "vitest";
import { roughDensity, type Situation } from "../../../../server/weighing/checks/situation.ts";
import { check, codesIn, crownGold, fineBalance, fineGold, readings } from "./situations.ts";

/** Displaced mass of a solid, g, in water and air as the watch takes them. */
const displacedBy = (grams: number, gPerCm3: number) => (grams / (gPerCm3 - 0.0012)) * 0.9968;

/** A piece weighed hung from the fine balance with that displaced mass. */
const hung = (dryGrams: number, displacedGrams: number, more: Partial<Situation>): Situation => ({
  method: "hung",
  dry: readings([dryGrams.toFixed(4)]),
  wet: readings([(dryGrams - displacedGrams).toFixed(4)]),
  balance: fineBalance,
  ...more,
});

// The sizes are common practice of the trade, each worked out again here.
describe("sizes of the trade's faults, and what the watch makes of them", () => {
  test("a 3 g ring of 18 ct with a diamond of 0.5 ct reads 13.9 instead of 15.5, and stones are named", () => {
    const stone = 0.1; // 0.5 ct
    const displaced = displacedBy(2.9, 15.5) + displacedBy(stone, 3.52);
    expect(roughDensity(3, displaced)).toBeCloseTo(13.9, 0);
    const claim = { metal: { metal: "au-750" }, lowGPerCm3: 15.2, highGPerCm3: 15.9 };
    const seen = check(hung(3, displaced, { claim }), "check.lower-than-claim");
    expect(seen.remedies.map(({ code }) => code)).toContain("check.remedy.what-lowers");
  });

  test("20 mg of water on an ounce of gold in the dry reading lowers it by 1.2 % hung and raises it by 0.06 % displaced", () => {
    const displaced = displacedBy(31.1035, 19.3);
    const wet = 31.1035 + 0.02;
    expect(roughDensity(wet, displaced + 0.02) / 19.3 - 1).toBeCloseTo(-0.012, 3);
    expect(roughDensity(wet, displaced) / 19.3 - 1).toBeCloseTo(0.0006, 4);
    const dried = { dryAfter: readings(["31.1035"]), claim: fineGold };
    const seen = check(hung(wet, displaced + 0.02, dried), "check.dry-mass-changed");
    expect(seen.params).toMatchObject({ change: "lost", cause: "lost" });
  });

  test("0.03 g of string in the dry reading of a coin of 1.3 g makes 10.22 out of 9.99", () => {
    const displaced = displacedBy(1.3, 9.99);
    expect(roughDensity(1.33, displaced)).toBeCloseTo(10.22, 2);
    const claim = { metal: { metal: "ag-800" }, lowGPerCm3: 9.9, highGPerCm3: 10.05 };
    const coin: Situation = {
      method: "displaced",
      dry: readings(["1.3300"]),
      wet: readings([displaced.toFixed(4)]),
      hangerGrams: 0.03,
      claim,
      balance: fineBalance,
    };
    expect(check(coin, "check.hanger-in-dry").params.hanger_g).toBe(0.03);
  });

  test("a hanger of 0.5 mm hung 10 mm deeper than at its zero lifts by 2 mg and takes 0.12 % off an ounce of gold", () => {
    const wire = (Math.PI / 4) * 0.05 ** 2 * 1 * 0.998; // cm, g
    expect(wire * 1000).toBeCloseTo(2, 1);
    expect(roughDensity(31.1035, displacedBy(31.1035, 19.3) + wire) / 19.3 - 1).toBeCloseTo(-0.0012, 4);
  });

  test("0.5 % of closed void takes 0.5 % off; the watch asks for bubbles before it doubts the metal", () => {
    const displaced = displacedBy(7.99, 17.41) * 1.005;
    const density = { valueGPerCm3: roughDensity(7.99, displaced), expandedGPerCm3: 0.02 };
    const seen = check(hung(7.99, displaced, { claim: crownGold, density }), "check.lower-than-claim");
    expect(seen.remedies.map(({ code }) => code)).toEqual([
      "check.remedy.lamp-and-brush",
      "check.remedy.what-lowers",
      "check.remedy.lighter-inside",
    ]);
  });

  test("an ounce of gold in a cup of 40 mm that loses 3 mg a minute for three minutes reads 0.6 % too dense", () => {
    const lost = 0.009;
    expect(roughDensity(31.1035, displacedBy(31.1035, 19.3) - lost) / 19.3 - 1).toBeCloseTo(0.0056, 3);
    const zeros = readings(["0.0000", (-lost).toFixed(4)]);
    const coin: Situation = {
      method: "displaced",
      dry: readings(["31.1035"]),
      wet: readings([(displacedBy(31.1035, 19.3) - lost).toFixed(4)]),
      zeros,
      claim: fineGold,
      balance: fineBalance,
      density: { valueGPerCm3: 19.408, expandedGPerCm3: 0.02 },
    };
    // an expected loss between zeros is no fault of the bench; what it does to the density is
    expect(codesIn(coin)).toEqual(["check.higher-than-claim"]);
  });
});
