import { expect, test } from "vitest";
import { load, traitsFor } from "../../calibration/balance.ts";
import { Inputs } from "../../calibration/input.ts";

const balance = { readabilityGrams: 0.0001, repeatabilityGrams: 0.0001, linearityGrams: 0 };

test("what a reading might still have drifted is an input of its own that repeats do not lessen", () => {
  // JCGM 100:2008, 4.2.3 and 5.2: a mean of n divides independent scatter by √n, a common cause stays whole.
  for (const readings of [["31.1035"], ["31.1035", "31.1036", "31.1034", "31.1035"]]) {
    const inputs = new Inputs();
    load(inputs, "dry", { readings, unit: "g", driftUGrams: 0.0002 }, traitsFor(balance, "dry"));
    expect(inputs.all.find(({ name }) => name === "dry, drift at reading")?.u).toBe(0.0002);
  }
  const inputs = new Inputs();
  load(inputs, "dry", { readings: ["31.1035"], unit: "g" }, traitsFor(balance, "dry"));
  expect(inputs.all.some(({ name }) => name.includes("drift at reading"))).toBe(false);
});
