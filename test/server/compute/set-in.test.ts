import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../../calibration/normal.ts";
import { seededRandom } from "../../../calibration/random.ts";
import { compute, isError } from "../../../server/compute/compute.ts";
import { metal } from "../../../server/metals/library.ts";
import { stated } from "./answers.ts";

/** Density of quartz 2.65 g/cm³ (CRC Handbook of Chemistry and Physics; from memory). */
const quartz = { name: "quartz", density_g_cm3: 2.65, u_g_cm3: 0.01 };

/** Readings of a whole of a mass and density in water of 20 °C, 0.9982 g/cm³, and air of 1.2 kg/m³. */
function weighed(massG: number, gPerCm3: number, change: object = {}) {
  const displaced = (massG * (0.99821 - 0.0012)) / (gPerCm3 - 0.0012);
  return {
    id: "specimen",
    method: "hung",
    dry: { readings: [massG.toFixed(3)] },
    immersed: { readings: [(massG - displaced).toFixed(3)] },
    liquid: { kind: "water", temperature_c: 20, temperature_u_c: 0.1 },
    air: { density_kg_m3: 1.2, u_kg_m3: 0.02 },
    balance: { readability_g: 0.001, repeatability_g: 0.001 },
    claim: "au-750",
    set_in: quartz,
    ...change,
  };
}

function errorOf(request: object) {
  const answer = compute(request);
  if (!isError(answer)) throw new Error("answered, not refused");
  return answer.error;
}

describe("gold set in quartz", () => {
  it("holds, by hand, ρ₁(M − Vρ₂)/(ρ₁ − ρ₂) of the alloy at both ends of what its claim allows, and is not tested", () => {
    const { low, high } = metal("au-750").densityGPerCm3;
    const gold = (rho: number) => (rho * (50 - (50 / 4) * 2.65)) / (rho - 2.65);
    const { set_in, fineness, conformity, not_excluded } = stated(weighed(50, 4));
    // ± 0.02 g/cm³ of 12.5 cm³ of quartz is ± 0.25 g, of alloy some 0.3
    expect(Math.abs(set_in!.alloy_g[0] - gold(high))).toBeLessThan(0.4);
    expect(Math.abs(set_in!.alloy_g[1] - gold(low))).toBeLessThan(0.4);
    expect(set_in!.alloy_g[0] + set_in!.body_g[1]).toBeCloseTo(50, 1);
    expect(fineness!.fine_g[0] / set_in!.alloy_g[0]).toBeCloseTo(0.75, 2);
    expect(conformity.state).toBe("inconclusive");
    expect(not_excluded).toEqual([]);
  });

  it("covers the true masses of drawn specimens, whatever recipe the gold is of", () => {
    const random = seededRandom(20);
    const uniform = () => random() / 2 ** 32;
    const recipes = metal("au-750").recipes!.map(metal);
    const draws = 200;
    let [alloy, fine] = [0, 0];
    for (let draw = 0; draw < draws; draw++) {
      const recipe = recipes[Math.floor(uniform() * recipes.length)]!;
      const stone = 2.65 + 0.01 * normalQuantile(uniform());
      const goldG = 5 + 20 * uniform();
      const stoneG = 20 + 30 * uniform();
      const volume = goldG / recipe.densityGPerCm3.nominal + stoneG / stone;
      const { set_in, fineness } = stated(weighed(goldG + stoneG, (goldG + stoneG) / volume));
      const within = ([low, high]: readonly number[], x: number) => low! <= x && x <= high!;
      if (within(set_in!.alloy_g, goldG)) alloy++;
      if (within(fineness!.fine_g, 0.75 * goldG)) fine++;
    }
    expect(alloy / draws).toBeGreaterThan(0.945);
    expect(fine / draws).toBeGreaterThan(0.945);
  });

  it("denser than every alloy of the claim is not the claim; lighter than quartz it is not quartz", () => {
    expect(stated(weighed(50, 18.5)).conformity.state).toBe("excluded");
    const light = stated(weighed(50, 2.4));
    expect(light.conformity.state).toBe("inconclusive");
    expect(light.fineness).toBeNull();
  });

  it("needs a claim, a body lighter than the claim's alloys, and nothing that tests the claim's density", () => {
    expect(errorOf(weighed(50, 4, { claim: undefined }))).toMatchObject({
      at: "set_in",
      message: { code: "compute.set-in-without-claim" },
    });
    expect(errorOf(weighed(50, 4, { set_in: { density_g_cm3: 15, u_g_cm3: 0.1 } }))).toMatchObject({
      at: "set_in.density_g_cm3",
      message: { code: "composite.refusal.body-not-lighter" },
    });
    expect(errorOf(weighed(50, 4, { decision_rule: { kind: "simple" } }))).toMatchObject({
      at: "decision_rule",
      message: { code: "compute.set-in-beside" },
    });
    expect(errorOf(weighed(50, 4, { set_in: { ...quartz, mass_g: 3 } })).at).toBe("set_in.mass_g");
  });
});
