import { describe, expect, test } from "vitest";
import type { Situation } from "../../../../server/weighing/checks/situation.ts";
import {
  check,
  codesIn,
  fineBalance,
  fineGold,
  fineSilver,
  kitchenScale,
  pocketScale,
  readings,
  soundOunce,
} from "./situations.ts";

const milligramBalance = {
  readabilityGrams: 0.001,
  repeatabilityGrams: 0.001,
  immersedRepeatabilityGrams: 0.002,
};

/** Volume of a ball in cm³, for sizes of bubbles: πd³/6. */
const ball = (millimetres: number) => (Math.PI * (millimetres / 10) ** 3) / 6;

describe("bubbles", () => {
  test("a coin of 1.2 g reading 10.21, 10.28, 10.33 is still climbing and has no mean yet", () => {
    // dry / (ρ/0.9968) of the three densities: 0.11716, 0.11637, 0.11580 g
    const coin: Situation = {
      ...soundOunce,
      claim: { metal: { metal: "ag-900" }, lowGPerCm3: 10.0, highGPerCm3: 10.5 },
      dry: readings(["1.2000"]),
      wet: readings(["1.0828", "1.0836", "1.0842"]),
    };
    const seen = check(coin, "check.still-climbing");
    expect(seen.params.densities).toEqual([{ decimal: "10.21" }, { decimal: "10.28" }, { decimal: "10.33" }]);
    expect(seen.severity).toBe("stop");
    expect(seen.remedies[0]?.code).toBe("check.remedy.go-on");
  });

  test("once two immersions agree, the early ones are offered for setting aside, not averaged in silence", () => {
    const wet = readings(["28.1395", "28.1421", "28.1434", "28.1435"]);
    const seen = check({ ...soundOunce, wet }, "check.climbed");
    expect(seen.remedies[0]?.offer).toEqual({ do: "exclude", role: "wet", places: [0, 1] });
    expect(codesIn({ ...soundOunce, wet })).not.toContain("check.still-climbing");
  });

  test("five immersions that still rise stop the run", () => {
    const wet = readings(["28.1300", "28.1330", "28.1360", "28.1390", "28.1420"]);
    expect(check({ ...soundOunce, wet }, "check.still-climbing").remedies[0]?.code).toBe(
      "check.remedy.stop-the-run",
    );
  });

  test("with the beaker on the pan a climb is a rise that gets smaller", () => {
    const wet = readings(["2.9680", "2.9640", "2.9610"]);
    expect(codesIn({ ...soundOunce, method: "displaced", wet })).toContain("check.still-climbing");
  });

  test("repeats that scatter both ways are no climb", () => {
    expect(codesIn({ ...soundOunce, wet: readings(["28.1433", "28.1438", "28.1431", "28.1436"]) })).toEqual(
      [],
    );
  });

  test("fresh tap water gives its air off: the density falls immersion by immersion", () => {
    const wet = readings(["28.1435", "28.1420", "28.1401"]);
    expect(check({ ...soundOunce, wet }, "check.bubbles-growing").params.grew_g).toBeCloseTo(0.0034, 6);
  });

  test("one bubble of 2 mm on an ounce of gold takes 0.26 %, and the low result is put down to it first", () => {
    // 4.2 mg and −0.26 %: common practice of the trade, worked out again here
    expect(ball(2) * 998.2).toBeCloseTo(4.18, 2);
    const displaced = 31.1035 * (0.9968 / 19.24);
    const wet = (31.1035 - displaced - ball(2) * 0.997).toFixed(4);
    expect((ball(2) * 0.997) / displaced).toBeCloseTo(0.0026, 4);
    const seen = check(
      {
        ...soundOunce,
        claim: fineGold,
        wet: readings([wet]),
        density: { valueGPerCm3: 19.19, expandedGPerCm3: 0.02 },
      },
      "check.lower-than-claim",
    );
    // the band begins at 19.22, so a smaller bubble already explains the distance
    expect(Math.floor(Number(seen.params.bubble_mm))).toBe(1);
    expect(seen.severity).toBe("warn");
  });
});

describe("values that give a fault away", () => {
  test("hung, the piece fallen off: the immersed reading is nothing and the density that of water", () => {
    const seen = check({ ...soundOunce, wet: readings(["0.0003"]) }, "check.nothing-on-hook");
    expect(seen.params).toMatchObject({ method: "hung" });
  });

  test("beaker on the pan, the piece on the bottom: the rise is the whole weight", () => {
    const piece: Situation = { ...soundOunce, method: "displaced", wet: readings(["31.1020"]) };
    expect(check(piece, "check.rests-on-bottom").params).toMatchObject({ case: "whole" });
    expect(codesIn(piece)).not.toContain("check.floats");
  });

  test("beaker on the pan, nothing in the water: the rise is less than any metal makes", () => {
    const piece: Situation = { ...soundOunce, method: "displaced", wet: readings(["0.0002"]) };
    expect(check(piece, "check.nothing-on-hook").params).toMatchObject({
      method: "displaced",
      wet_g: 0.0002,
    });
  });

  test("a kitchen scale of 0.1 g that shows 0.1 for a 3 g ring is too coarse to be accused of an empty hook", () => {
    const ring: Situation = {
      method: "displaced",
      dry: readings(["3.0"]),
      wet: readings(["0.1"]),
      balance: kitchenScale,
    };
    expect(codesIn(ring)).toEqual([]);
  });

  test("a touching piece that comes out lighter than any solid metal is asked about", () => {
    const wet = readings(["18.20"]);
    expect(codesIn({ ...soundOunce, wet, balance: pocketScale })).toContain("check.rests-on-bottom");
  });

  test("an edge above the water makes the piece denser than osmium", () => {
    const seen = check({ ...soundOunce, claim: fineGold, wet: readings(["29.9035"]) }, "check.not-covered");
    expect(seen.params.density_g_cm3).toBeGreaterThan(22.7);
  });

  test("cork under a sinker-less hanger pulls upwards: it floats, and a sinker is named", () => {
    const cork: Situation = { ...soundOunce, dry: readings(["3.1200"]), wet: readings(["-8.4000"]) };
    const seen = check(cork, "check.floats");
    expect(seen.remedies.map(({ code }) => code)).toContain("check.remedy.use-a-sinker");
  });

  test("a flask heavier with the piece than the two together holds a negative displaced mass", () => {
    const flask: Situation = {
      method: "flask",
      dry: readings(["12.0000"]),
      flaskFull: readings(["60.0000"]),
      wet: readings(["72.0400"]),
      balance: fineBalance,
    };
    expect(codesIn(flask)).toEqual(["check.displacement-negative"]);
  });

  test("a negative rise is no displaced mass", () => {
    const piece: Situation = { ...soundOunce, method: "displaced", wet: readings(["-2.9600"]) };
    expect(check(piece, "check.displacement-negative").params).toMatchObject({ method: "displaced" });
  });
});

describe("the hanger", () => {
  test("a hanger weighed with the dry piece lifts sound silver above its claim", () => {
    // 10.50 g/cm³ and the displaced mass right, but 0.40 g of hanger in the dry reading
    const dry = readings(["31.5035"]);
    const seen = check(
      { ...soundOunce, method: "displaced", dry, wet: readings(["2.9527"]), hangerGrams: 0.4 },
      "check.hanger-in-dry",
    );
    expect(seen.params.hanger_g).toBe(0.4);
  });

  test("a hanger in the dry reading only, the immersed one tared, makes gold look light", () => {
    const hangerGrams = 0.35;
    const displaced = 31.1035 * (0.9968 / 19.288);
    const situation: Situation = {
      ...soundOunce,
      claim: fineGold,
      dry: readings([(31.1035 + hangerGrams).toFixed(4)]),
      wet: readings([(31.1035 - displaced + hangerGrams).toFixed(4)]),
      hangerGrams,
    };
    expect(codesIn(situation)).toContain("check.hanger-in-dry");
  });

  test("a hanger stated as weighed in although the balance was zeroed with it is taken off twice", () => {
    const situation: Situation = { ...soundOunce, wet: readings(["28.1435"]), hangerGrams: 5.1 };
    expect(check(situation, "check.hanger-in-immersed").params.hanger_g).toBe(5.1);
  });

  test("a hanger that was weighed in is in the immersed reading, and nothing is wrong with that", () => {
    expect(codesIn({ ...soundOunce, wet: readings(["33.2435"]), hangerGrams: 5.1 })).toEqual([]);
  });

  test("a piece that floats is measured with a sinker weighed in", () => {
    // 10 g of wood that displaces 12 g, held under by a sinker of 40 g in water
    const wood = { ...soundOunce, dry: readings(["10.0000"]), wet: readings(["38.0000"]), hangerGrams: 40 };
    expect(codesIn({ ...wood, claim: undefined } as never)).toEqual([]);
  });

  test("the zero key pressed while the piece hangs is seen in the live readings", () => {
    const live = readings(["28.1430", "28.1434", "0.0000", "0.0001"], "g", 1);
    expect(check({ ...soundOunce, live }, "check.tare-while-immersed").params).toMatchObject({
      case: "stepped",
      from_g: 28.1434,
      to_g: 0,
    });
  });

  test("the zero key pressed while the piece hangs is seen in the empty hanger afterwards", () => {
    const zeros = readings(["0.0000", "-2.9612"]);
    const situation: Situation = { ...soundOunce, method: "displaced", wet: readings(["2.9600"]), zeros };
    expect(codesIn(situation)).toEqual(["check.tare-while-immersed"]);
  });

  test("a knocked table moves the zero of the empty hanger", () => {
    const seen = check({ ...soundOunce, zeros: readings(["0.0000", "0.0061"]) }, "check.zero-moved");
    expect(seen.params.moved_g).toBeCloseTo(0.0061, 6);
  });

  test("a film of 28 mg carried out on a coin is expected of a beaker on the pan; 0.4 g is not", () => {
    // 10 µm on both faces of a coin of 39 mm and its edge: about 28 mg (common practice), worked out again
    const film = (2 * (Math.PI / 4) * 3.9 ** 2 + Math.PI * 3.9 * 0.28) * 0.001;
    expect(film).toBeGreaterThan(0.023);
    expect(film).toBeLessThan(0.03);
    const afterwards = (zero: string): Situation => ({
      ...soundOunce,
      method: "displaced",
      wet: readings(["2.9600"]),
      zeros: readings(["0.0000", zero]),
    });
    expect(codesIn(afterwards("-0.0280"))).toEqual([]);
    expect(codesIn(afterwards("-0.4000"))).toEqual(["check.zero-moved"]);
  });
});

describe("before and after", () => {
  test("a hollow chain that gained 0.31 g has water inside", () => {
    const chain: Situation = {
      ...soundOunce,
      dry: readings(["24.18"]),
      wet: readings(["21.80"]),
      dryAfter: readings(["24.49"]),
      claim: fineSilver,
      balance: pocketScale,
    };
    const seen = check(chain, "check.dry-mass-changed");
    expect(seen.params).toMatchObject({ change: "gained", cause: "water" });
    expect(seen.params.by_g).toBeCloseTo(0.31, 6);
  });

  test("a dry mass that came back within the scatter is left alone", () => {
    expect(codesIn({ ...soundOunce, dryAfter: readings(["31.1037"]) })).toEqual([]);
  });

  test("twice the mass after the immersion is another piece", () => {
    expect(
      check({ ...soundOunce, dryAfter: readings(["15.5000"]) }, "check.dry-mass-changed").params,
    ).toMatchObject({ cause: "foreign" });
  });

  test("a beaker of 60 mm loses 7 mg a minute to the air and the drift is named as such", () => {
    const live = readings(
      Array.from({ length: 31 }, (_, second) => (2.96 - (0.007 / 60) * second).toFixed(4)),
      "g",
      1,
    );
    const seen = check(
      { ...soundOunce, method: "displaced", wet: readings(["2.9600"]), live },
      "check.drift-immersed",
    );
    expect(seen.params).toMatchObject({ moves: "down", cause: "lost" });
    expect(seen.params.g_per_minute).toBeCloseTo(0.007, 4);
  });

  test("a reading that wanders within its noise is no drift", () => {
    const texts = Array.from({ length: 20 }, (_, n) => (28.1435 + 0.0002 * Math.sin(n * 2.4)).toFixed(4));
    expect(codesIn({ ...soundOunce, live: readings(texts, "g", 1) })).toEqual([]);
  });

  test("when the thermometer rules the budget, more repeats will not help and the watch says how little", () => {
    const seen = check(
      {
        ...soundOunce,
        balance: milligramBalance,
        density: { valueGPerCm3: 10.475, expandedGPerCm3: 0.01 },
        repeatsShare: 0.04,
      },
      "check.repeats-exhausted",
    );
    expect(seen.params).toMatchObject({ from_g_cm3: 0.01 });
    expect(seen.params.to_g_cm3).toBeCloseTo(0.0098, 4);
  });

  test("while repeats still rule the budget, nothing is said against them", () => {
    const density = { valueGPerCm3: 10.475, expandedGPerCm3: 0.01 };
    expect(codesIn({ ...soundOunce, density, repeatsShare: 0.87 })).toEqual([]);
  });

  test("18.9 for a coin that should be 17.6 has few innocent causes, and they are named", () => {
    const coin: Situation = {
      ...soundOunce,
      claim: { metal: { metal: "au-917" }, lowGPerCm3: 17.4, highGPerCm3: 17.8 },
      dry: readings(["7.99"]),
      wet: readings(["7.57"]),
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0.001, immersedRepeatabilityGrams: 0.002 },
    };
    const seen = check(coin, "check.higher-than-claim");
    expect(seen.remedies[0]?.code).toBe("check.remedy.cover");
  });
});

describe("readings that cannot be those of one load at rest", () => {
  // χ² of 3 readings, 2 degrees of freedom, exceeds 13.816 with probability 0.001 (NIST e-Handbook 1.3.6.7.4, from memory)
  test("repeats that scatter far beyond what was stated contradict it, and stop", () => {
    const wet = readings(["28.1435", "28.1475", "28.1450"]);
    const seen = check({ ...soundOunce, wet }, "check.scatter-contradicts");
    expect(seen.severity).toBe("stop");
    expect(Number(seen.params.chi_square)).toBeGreaterThan(13.816);
    expect(seen.params).toMatchObject({ role: "immersed", count: 3, index: 1, value_g: 28.1475 });
  });

  test("repeats at twice the stated scatter are told, and stop nothing yet", () => {
    const wet = readings(["28.1435", "28.1442", "28.1429"]);
    expect(check({ ...soundOunce, wet }, "check.scatter-contradicts").severity).toBe("warn");
    const closer = readings(["28.1435", "28.1438", "28.1432"]);
    expect(codesIn({ ...soundOunce, wet: closer })).toEqual([]);
  });

  test("seven readings that run one way without a step back do not rest", () => {
    const texts = ["31.1035", "31.1036", "31.1037", "31.1038", "31.1039", "31.1040", "31.1041"];
    const balance = { ...fineBalance, repeatabilityGrams: 0.0005 };
    const seen = check({ ...soundOunce, dry: readings(texts), wet: [], balance }, "check.trend");
    expect(seen).toMatchObject({ severity: "stop", params: { role: "dry", count: 7, first_g: 31.1035 } });
    const turned = [...texts.slice(0, 5), "31.1038", "31.1041"];
    expect(codesIn({ ...soundOunce, dry: readings(turned), wet: [], balance })).not.toContain("check.trend");
  });

  test("an interval that lies wholly above osmium stops; one that reaches it does not", () => {
    const above = { valueGPerCm3: 23.1, expandedGPerCm3: 0.3 };
    expect(check({ ...soundOunce, density: above }, "check.denser-than-osmium").severity).toBe("stop");
    const reaching = { valueGPerCm3: 23.1, expandedGPerCm3: 0.8 };
    expect(codesIn({ ...soundOunce, density: reaching })).not.toContain("check.denser-than-osmium");
  });
});
