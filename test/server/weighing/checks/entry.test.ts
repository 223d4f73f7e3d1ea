import { describe, expect, test } from "vitest";
import { watches } from "../../../../server/weighing/checks/index.ts";
import { suspicionKinds } from "../../../../server/weighing/checks/suspicion.ts";
import {
  crownGold,
  fineBalance,
  fineSilver,
  kindsIn,
  kitchenScale,
  pocketScale,
  readings,
  soundOunce,
  suspicion,
} from "./situations.ts";

describe("the watch as a whole", () => {
  test("an ounce weighed without fault raises no suspicion", () => {
    expect(kindsIn(soundOunce)).toEqual([]);
  });

  test("a piece of which nothing is known yet raises no suspicion", () => {
    expect(kindsIn({ method: "hung", dry: [], wet: [], balance: fineBalance })).toEqual([]);
  });

  test("every kind of suspicion has exactly one watch", () => {
    expect(watches.map(({ kind }) => kind).sort()).toEqual([...suspicionKinds].sort());
  });
});

describe("slips of entry", () => {
  test("a display that has not moved from one capture to the next is asked about", () => {
    const [dry] = readings(["31.1035"]);
    const seen = suspicion({ ...soundOunce, dry: [dry!, { ...dry!, unmoved: true }] }, "display-stuck");
    expect(seen.says).toContain("31.1035 g without the least change");
    expect(seen.blocking).toBe(false);
  });

  test("the unit key pressed between dry and immersed is named and blocks", () => {
    const seen = suspicion(
      { ...soundOunce, wet: [{ at: "2026-03-02T09:01:00.000Z", text: "140.7175", unit: "ct" }] },
      "units-mixed",
    );
    expect(seen.says).toContain("31.1035 g, then 140.7175 ct");
    expect(seen.says).toContain("(28.1435 g)");
    expect(seen.blocking).toBe(true);
  });

  test("a typed reading that lost its trailing zero is asked about", () => {
    const dry = readings(["10.40", "10.4"]);
    const seen = suspicion({ ...soundOunce, dry, wet: [], balance: pocketScale }, "decimals-changed");
    expect(seen.says).toContain("10.40 g and 10.4 g");
    expect(seen.blocking).toBe(false);
  });

  test("a balance of two ranges that shows fewer decimals at the heavier load is not asked about", () => {
    const dry = readings(["131.104"]);
    expect(kindsIn({ ...soundOunce, dry, wet: readings(["118.6289"]) })).not.toContain("decimals-changed");
  });

  test.each([
    [68, 20],
    [72.5, 22.5],
    [50, 10],
  ])("water typed as %s °C is asked about as °F and %s °C is offered", (typed, celsius) => {
    const seen = suspicion({ ...soundOunce, waterCelsius: typed }, "fahrenheit");
    expect(seen.remedies[0]?.offer).toEqual({ do: "set-celsius", celsius });
  });

  test.each([5, 21.4, 38])("water at %s °C is taken as stated", (waterCelsius) => {
    expect(kindsIn({ ...soundOunce, waterCelsius, roomCelsius: waterCelsius })).toEqual([]);
  });

  test("water of 8 °C from the refrigerator in a room of 21 °C: bubbles will grow", () => {
    const seen = suspicion({ ...soundOunce, waterCelsius: 8, roomCelsius: 21 }, "water-unlike-room");
    expect(seen.says).toContain("13.0 °C colder");
  });

  test("31.1 and 29.5 g in each other's boxes: changed over they make gold", () => {
    const seen = suspicion(
      { method: "hung", dry: readings(["29.5"]), wet: readings(["31.1"]), balance: kitchenScale },
      "boxes-swapped",
    );
    expect(seen.says).toContain("19.38 g/cm³"); // 31.1/1.6 × 0.9968 + 0.0012
    expect(seen.remedies[0]?.offer).toEqual({ do: "swap-dry-and-wet" });
  });

  test("dry and rise in each other's boxes: changed over they make silver", () => {
    const seen = suspicion(
      { method: "displaced", dry: readings(["2.97"]), wet: readings(["31.20"]), balance: pocketScale },
      "boxes-swapped",
    );
    expect(seen.says).toContain("10.47 g/cm³");
  });

  test("a displaced mass entered as immersed reading is recognised by the silver it makes", () => {
    const seen = suspicion(
      {
        method: "hung",
        dry: readings(["31.20"]),
        wet: readings(["2.97"]),
        claim: fineSilver,
        balance: pocketScale,
      },
      "displaced-for-immersed",
    );
    expect(seen.ask).toBe("Does the water stand on the balance? Then the reading is the displaced mass.");
  });

  test("an immersed reading entered as rise is recognised too", () => {
    const seen = suspicion(
      {
        method: "displaced",
        dry: readings(["31.10"]),
        wet: readings(["28.14"]),
        claim: fineSilver,
        balance: pocketScale,
      },
      "displaced-for-immersed",
    );
    expect(seen.remedies[0]?.offer).toEqual({ do: "read-as-immersed" });
  });

  test("a piece of another customer has another mass than its ticket", () => {
    const expectedMass = { lowGrams: 7.97, highGrams: 8.0, from: "ticket" };
    const situation = { ...soundOunce, dry: readings(["8.1204"]), wet: [], claim: crownGold, expectedMass };
    const seen = suspicion(situation, "mass-not-expected");
    expect(seen.says).toContain("8.120 g; the ticket says 7.970 g to 8.000 g");
    expect(seen.blocking).toBe(true);
  });

  test("pennyweights typed as grams fit the ticket once they are read as pennyweights", () => {
    const expectedMass = { lowGrams: 31.05, highGrams: 31.2, from: "specification" };
    const situation = { ...soundOunce, dry: readings(["20.00"]), wet: [], expectedMass }; // 20 dwt = 1 ozt
    expect(suspicion(situation, "mass-not-expected").ask).toBe("Does the balance show dwt rather than g?");
  });

  test("dry repeats further apart than the balance scatters are another piece or a wet one", () => {
    const seen = suspicion(
      { ...soundOunce, dry: readings(["31.1035", "31.1214"]), wet: [] },
      "dry-readings-differ",
    );
    expect(seen.says).toContain("18 mg apart");
    expect(kindsIn({ ...soundOunce, dry: readings(["31.1035", "31.1037"]), wet: [] })).toEqual([]);
  });
});
