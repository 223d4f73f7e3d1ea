import { describe, expect, test } from "vitest";
import { methods } from "../../../../server/methods/index.ts";
import { checkCodes } from "../../../../server/weighing/checks/check.ts";
import { procedureChecks } from "../../../../server/weighing/checks/index.ts";
import {
  check,
  codesIn,
  crownGold,
  fineBalance,
  fineSilver,
  kitchenScale,
  pocketScale,
  readings,
  soundOunce,
} from "./situations.ts";

describe("the checks as a whole", () => {
  test("an ounce weighed without fault raises no check", () => {
    expect(codesIn(soundOunce)).toEqual([]);
  });

  test("a piece of which nothing is known yet raises no check", () => {
    expect(codesIn({ method: "hung", dry: [], wet: [], balance: fineBalance })).toEqual([]);
  });

  test("every code has exactly one check", () => {
    const ofMethods = Object.values(methods).flatMap(({ checks = [] }) => checks);
    expect([...procedureChecks, ...ofMethods].map(({ code }) => code).sort()).toEqual([...checkCodes].sort());
  });
});

describe("slips of entry", () => {
  test("a display that has not moved from one capture to the next is asked about", () => {
    const [dry] = readings(["31.1035"]);
    const seen = check({ ...soundOunce, dry: [dry!, { ...dry!, unmoved: true }] }, "check.display-stuck");
    expect(seen.params).toEqual({ reading: { decimal: "31.1035" }, unit: "g" });
    expect(seen.severity).toBe("warn");
  });

  test("the unit key pressed between dry and immersed is named and blocks", () => {
    const seen = check(
      { ...soundOunce, wet: [{ at: "2026-03-02T09:01:00.000Z", text: "140.7175", unit: "ct" }] },
      "check.units-mixed",
    );
    expect(seen.params).toMatchObject({ first: { decimal: "31.1035" }, first_unit: "g", other_unit: "ct" });
    expect(seen.params.other_g).toBeCloseTo(28.1435, 6);
    expect(seen.severity).toBe("stop");
  });

  test("a typed reading that lost its trailing zero is asked about", () => {
    const dry = readings(["10.40", "10.4"]);
    const seen = check({ ...soundOunce, dry, wet: [], balance: pocketScale }, "check.decimals-changed");
    expect(seen.params).toMatchObject({ fine: { decimal: "10.40" }, coarse: { decimal: "10.4" } });
    expect(seen.severity).toBe("warn");
  });

  test("a balance of two ranges that shows fewer decimals at the heavier load is not asked about", () => {
    const dry = readings(["131.104"]);
    expect(codesIn({ ...soundOunce, dry, wet: readings(["118.6289"]) })).not.toContain(
      "check.decimals-changed",
    );
  });

  test.each([
    [68, 20],
    [72.5, 22.5],
    [50, 10],
  ])("water typed as %s °C is asked about as °F and %s °C is offered", (typed, celsius) => {
    const seen = check({ ...soundOunce, waterCelsius: typed }, "check.fahrenheit");
    expect(seen.remedies[0]?.offer).toEqual({ do: "set-celsius", celsius });
  });

  test.each([5, 21.4, 38])("water at %s °C is taken as stated", (waterCelsius) => {
    expect(codesIn({ ...soundOunce, waterCelsius, roomCelsius: waterCelsius })).toEqual([]);
  });

  test("water of 8 °C from the refrigerator in a room of 21 °C: bubbles will grow", () => {
    const seen = check({ ...soundOunce, waterCelsius: 8, roomCelsius: 21 }, "check.water-unlike-room");
    expect(seen.params).toMatchObject({ difference: 13, side: "colder" });
  });

  test("31.1 and 29.5 g in each other's boxes: changed over they make gold", () => {
    const seen = check(
      { method: "hung", dry: readings(["29.5"]), wet: readings(["31.1"]), balance: kitchenScale },
      "check.boxes-swapped",
    );
    expect(seen.params.density_g_cm3).toBeCloseTo(19.38, 2); // 31.1/1.6 × 0.9968 + 0.0012
    expect(seen.remedies[0]?.offer).toEqual({ do: "swap-dry-and-wet" });
  });

  test("dry and rise in each other's boxes: changed over they make silver", () => {
    const seen = check(
      { method: "displaced", dry: readings(["2.97"]), wet: readings(["31.20"]), balance: pocketScale },
      "check.boxes-swapped",
    );
    expect(seen.params.density_g_cm3).toBeCloseTo(10.47, 2);
  });

  test("a rise above the dry reading whose exchange would not give the claim is first of all a beaker not zeroed", () => {
    const seen = check(
      {
        method: "displaced",
        dry: readings(["31.10"]),
        wet: readings(["203.12"]),
        claim: fineSilver,
        balance: pocketScale,
      },
      "check.boxes-swapped",
    );
    // 203.12/31.10 × 0.9968 = 6.51 (by hand) is no silver
    expect(seen.remedies.map(({ offer }) => offer?.do)).toEqual(["repeat", "swap-dry-and-wet"]);
  });

  test("a displaced mass entered as immersed reading is recognised by the silver it makes", () => {
    const seen = check(
      {
        method: "hung",
        dry: readings(["31.20"]),
        wet: readings(["2.97"]),
        claim: fineSilver,
        balance: pocketScale,
      },
      "check.displaced-for-immersed",
    );
    expect(seen.params).toMatchObject({ method: "hung" });
  });

  test("an immersed reading entered as rise is recognised too", () => {
    const seen = check(
      {
        method: "displaced",
        dry: readings(["31.10"]),
        wet: readings(["28.14"]),
        claim: fineSilver,
        balance: pocketScale,
      },
      "check.displaced-for-immersed",
    );
    expect(seen.remedies[0]?.offer).toEqual({ do: "read-as-immersed" });
  });

  test("a piece of another customer has another mass than its ticket", () => {
    const expectedMass = { lowGrams: 7.97, highGrams: 8.0, from: "ticket" };
    const situation = { ...soundOunce, dry: readings(["8.1204"]), wet: [], claim: crownGold, expectedMass };
    const seen = check(situation, "check.mass-not-expected");
    expect(seen.params).toMatchObject({
      dry_g: 8.1204,
      low_g: 7.97,
      high_g: 8,
      from: "ticket",
      case: "other",
    });
    expect(seen.severity).toBe("stop");
  });

  test("pennyweights typed as grams fit the ticket once they are read as pennyweights", () => {
    const expectedMass = { lowGrams: 31.05, highGrams: 31.2, from: "specification" };
    const situation = { ...soundOunce, dry: readings(["20.00"]), wet: [], expectedMass }; // 20 dwt = 1 ozt
    expect(check(situation, "check.mass-not-expected").params).toMatchObject({
      case: "unit",
      meant: "dwt",
      unit: "g",
    });
  });

  test("dry repeats further apart than the balance scatters are another piece or a wet one", () => {
    const seen = check(
      { ...soundOunce, dry: readings(["31.1035", "31.1214"]), wet: [] },
      "check.dry-readings-differ",
    );
    expect(seen.params.span_g).toBeCloseTo(0.0179, 4);
    expect(codesIn({ ...soundOunce, dry: readings(["31.1035", "31.1037"]), wet: [] })).toEqual([]);
  });
});
