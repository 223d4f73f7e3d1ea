import { describe, expect, test } from "vitest";
import type { Situation } from "../../../../server/weighing/checks/situation.ts";
import {
  fineBalance,
  fineGold,
  fineSilver,
  kindsIn,
  kitchenScale,
  pocketScale,
  readings,
  soundOunce,
  suspicion,
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
      claim: { name: "an old silver", lowGPerCm3: 10.0, highGPerCm3: 10.5 },
      dry: readings(["1.2000"]),
      wet: readings(["1.0828", "1.0836", "1.0842"]),
    };
    const seen = suspicion(coin, "still-climbing");
    expect(seen.says).toContain("10.21, 10.28, 10.33");
    expect(seen.blocking).toBe(true);
    expect(seen.remedies[0]?.says).toBe("Go on until two immersions agree.");
  });

  test("once two immersions agree, the early ones are offered for setting aside, not averaged in silence", () => {
    const wet = readings(["28.1395", "28.1421", "28.1434", "28.1435"]);
    const seen = suspicion({ ...soundOunce, wet }, "climbed");
    expect(seen.remedies[0]?.offer).toEqual({ do: "set-aside", role: "wet", places: [0, 1] });
    expect(kindsIn({ ...soundOunce, wet })).not.toContain("still-climbing");
  });

  test("five immersions that still rise stop the run", () => {
    const wet = readings(["28.1300", "28.1330", "28.1360", "28.1390", "28.1420"]);
    expect(suspicion({ ...soundOunce, wet }, "still-climbing").remedies[0]?.says).toContain("Stop the run");
  });

  test("with the beaker on the pan a climb is a rise that gets smaller", () => {
    const wet = readings(["2.9680", "2.9640", "2.9610"]);
    expect(kindsIn({ ...soundOunce, method: "displaced", wet })).toContain("still-climbing");
  });

  test("repeats that scatter both ways are no climb", () => {
    expect(kindsIn({ ...soundOunce, wet: readings(["28.1433", "28.1438", "28.1431", "28.1436"]) })).toEqual(
      [],
    );
  });

  test("fresh tap water gives its air off: the density falls immersion by immersion", () => {
    const wet = readings(["28.1435", "28.1420", "28.1401"]);
    expect(suspicion({ ...soundOunce, wet }, "bubbles-growing").says).toContain("grew by 3.4 mg");
  });

  test("one bubble of 2 mm on an ounce of gold takes 0.26 %, and the low result is put down to it first", () => {
    // 4.2 mg and −0.26 %: common practice of the trade, worked out again here
    expect(ball(2) * 998.2).toBeCloseTo(4.18, 2);
    const displaced = 31.1035 * (0.9968 / 19.24);
    const wet = (31.1035 - displaced - ball(2) * 0.997).toFixed(4);
    expect((ball(2) * 0.997) / displaced).toBeCloseTo(0.0026, 4);
    const seen = suspicion(
      {
        ...soundOunce,
        claim: fineGold,
        wet: readings([wet]),
        density: { valueGPerCm3: 19.19, expandedGPerCm3: 0.02 },
      },
      "lower-than-claim",
    );
    // the band begins at 19.22, so a smaller bubble already explains the distance
    expect(seen.says).toMatch(/one bubble of 1\.\d mm/);
    expect(seen.blocking).toBe(false);
  });
});

describe("values that give a fault away", () => {
  test("hung, the piece fallen off: the immersed reading is nothing and the density that of water", () => {
    const seen = suspicion({ ...soundOunce, wet: readings(["0.0003"]) }, "nothing-on-hook");
    expect(seen.says).toContain("reads like an empty hook");
  });

  test("beaker on the pan, the piece on the bottom: the rise is the whole weight", () => {
    const piece: Situation = { ...soundOunce, method: "displaced", wet: readings(["31.1020"]) };
    expect(suspicion(piece, "rests-on-bottom").says).toContain("reads like a piece resting on the bottom");
    expect(kindsIn(piece)).not.toContain("floats");
  });

  test("beaker on the pan, nothing in the water: the rise is less than any metal makes", () => {
    const piece: Situation = { ...soundOunce, method: "displaced", wet: readings(["0.0002"]) };
    expect(suspicion(piece, "nothing-on-hook").says).toContain("rose by 0.20 mg");
  });

  test("a kitchen scale of 0.1 g that shows 0.1 for a 3 g ring is too coarse to be accused of an empty hook", () => {
    const ring: Situation = {
      method: "displaced",
      dry: readings(["3.0"]),
      wet: readings(["0.1"]),
      balance: kitchenScale,
    };
    expect(kindsIn(ring)).toEqual([]);
  });

  test("a touching piece that comes out lighter than any solid metal is asked about", () => {
    const wet = readings(["18.20"]);
    expect(kindsIn({ ...soundOunce, wet, balance: pocketScale })).toContain("rests-on-bottom");
  });

  test("an edge above the water makes the piece denser than osmium", () => {
    const seen = suspicion({ ...soundOunce, claim: fineGold, wet: readings(["29.9035"]) }, "not-covered");
    expect(seen.says).toContain("denser than any metal there is");
  });

  test("cork under a sinker-less hanger pulls upwards: it floats, and a sinker is named", () => {
    const cork: Situation = { ...soundOunce, dry: readings(["3.1200"]), wet: readings(["-8.4000"]) };
    const seen = suspicion(cork, "floats");
    expect(seen.remedies.some(({ says }) => says.includes("sinker"))).toBe(true);
  });

  test("a flask heavier with the piece than the two together holds a negative displaced mass", () => {
    const flask: Situation = {
      method: "flask",
      dry: readings(["12.0000"]),
      flaskFull: readings(["60.0000"]),
      wet: readings(["72.0400"]),
      balance: fineBalance,
    };
    expect(kindsIn(flask)).toEqual(["displacement-negative"]);
  });

  test("a negative rise is no displaced mass", () => {
    const piece: Situation = { ...soundOunce, method: "displaced", wet: readings(["-2.9600"]) };
    expect(suspicion(piece, "displacement-negative").ask).toContain("zeroed with the beaker");
  });
});

describe("the hanger", () => {
  test("a hanger weighed with the dry piece lifts sound silver above its claim", () => {
    // 10.50 g/cm³ and the displaced mass right, but 0.40 g of hanger in the dry reading
    const dry = readings(["31.5035"]);
    const seen = suspicion(
      { ...soundOunce, method: "displaced", dry, wet: readings(["2.9527"]), hangerGrams: 0.4 },
      "hanger-in-dry",
    );
    expect(seen.says).toContain("With the hanger (0.4000 g) taken out");
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
    expect(kindsIn(situation)).toContain("hanger-in-dry");
  });

  test("a hanger stated as weighed in although the balance was zeroed with it is taken off twice", () => {
    const situation: Situation = { ...soundOunce, wet: readings(["28.1435"]), hangerGrams: 5.1 };
    expect(suspicion(situation, "hanger-in-immersed").says).toContain("5.100 g");
  });

  test("a hanger that was weighed in is in the immersed reading, and nothing is wrong with that", () => {
    expect(kindsIn({ ...soundOunce, wet: readings(["33.2435"]), hangerGrams: 5.1 })).toEqual([]);
  });

  test("a piece that floats is measured with a sinker weighed in", () => {
    // 10 g of wood that displaces 12 g, held under by a sinker of 40 g in water
    const wood = { ...soundOunce, dry: readings(["10.0000"]), wet: readings(["38.0000"]), hangerGrams: 40 };
    expect(kindsIn({ ...wood, claim: undefined } as never)).toEqual([]);
  });

  test("the zero key pressed while the piece hangs is seen in the live readings", () => {
    const live = readings(["28.1430", "28.1434", "0.0000", "0.0001"], "g", 1);
    expect(suspicion({ ...soundOunce, live }, "tare-while-immersed").says).toContain(
      "from 28.14 g to 0 g in one step",
    );
  });

  test("the zero key pressed while the piece hangs is seen in the empty hanger afterwards", () => {
    const zeros = readings(["0.0000", "-2.9612"]);
    const situation: Situation = { ...soundOunce, method: "displaced", wet: readings(["2.9600"]), zeros };
    expect(kindsIn(situation)).toEqual(["tare-while-immersed"]);
  });

  test("a knocked table moves the zero of the empty hanger", () => {
    const seen = suspicion({ ...soundOunce, zeros: readings(["0.0000", "0.0061"]) }, "zero-moved");
    expect(seen.says).toContain("6.1 mg");
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
    expect(kindsIn(afterwards("-0.0280"))).toEqual([]);
    expect(kindsIn(afterwards("-0.4000"))).toEqual(["zero-moved"]);
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
    const seen = suspicion(chain, "dry-mass-changed");
    expect(seen.says).toContain("gained 0.3100 g");
    expect(seen.ask).toBe("Is there water inside or still on the piece?");
  });

  test("a dry mass that came back within the scatter is left alone", () => {
    expect(kindsIn({ ...soundOunce, dryAfter: readings(["31.1037"]) })).toEqual([]);
  });

  test("twice the mass after the immersion is another piece", () => {
    expect(suspicion({ ...soundOunce, dryAfter: readings(["15.5000"]) }, "dry-mass-changed").ask).toBe(
      "Is this the same piece?",
    );
  });

  test("a beaker of 60 mm loses 7 mg a minute to the air and the drift is named as such", () => {
    const live = readings(
      Array.from({ length: 31 }, (_, second) => (2.96 - (0.007 / 60) * second).toFixed(4)),
      "g",
      1,
    );
    const seen = suspicion(
      { ...soundOunce, method: "displaced", wet: readings(["2.9600"]), live },
      "drift-immersed",
    );
    expect(seen.says).toMatch(/falls by (6\.9|7\.0|7\.1) mg a minute/);
    expect(seen.ask).toContain("evaporate");
  });

  test("a reading that wanders within its noise is no drift", () => {
    const texts = Array.from({ length: 20 }, (_, n) => (28.1435 + 0.0002 * Math.sin(n * 2.4)).toFixed(4));
    expect(kindsIn({ ...soundOunce, live: readings(texts, "g", 1) })).toEqual([]);
  });

  test("when the thermometer rules the budget, more repeats will not help and the watch says how little", () => {
    const seen = suspicion(
      {
        ...soundOunce,
        balance: milligramBalance,
        density: { valueGPerCm3: 10.475, expandedGPerCm3: 0.01 },
        repeatsShare: 0.04,
      },
      "repeats-exhausted",
    );
    expect(seen.says).toContain("from 0.010 to 0.0098");
  });

  test("while repeats still rule the budget, nothing is said against them", () => {
    const density = { valueGPerCm3: 10.475, expandedGPerCm3: 0.01 };
    expect(kindsIn({ ...soundOunce, density, repeatsShare: 0.87 })).toEqual([]);
  });

  test("18.9 for a coin that should be 17.6 has few innocent causes, and they are named", () => {
    const coin: Situation = {
      ...soundOunce,
      claim: { name: "22 ct gold", lowGPerCm3: 17.4, highGPerCm3: 17.8 },
      dry: readings(["7.99"]),
      wet: readings(["7.57"]),
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0.001, immersedRepeatabilityGrams: 0.002 },
    };
    const seen = suspicion(coin, "higher-than-claim");
    expect(seen.ask).toContain("Fully covered");
  });
});
