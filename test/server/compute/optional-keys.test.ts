import { describe, expect, it } from "vitest";
import type { Statement } from "../../../server/weighing/statement-shape.ts";
import { stated } from "./answers.ts";

const ounce = {
  id: "o1",
  method: "hung",
  dry: { readings: ["31.1035"] },
  immersed: { readings: ["28.1435"] },
  liquid: { kind: "water", temperature_c: 20, temperature_u_c: 0.01 },
  air: { density_kg_m3: 1.2, u_kg_m3: 0.001 },
  balance: { readability_g: 0.0001, repeatability_g: 0.0001, immersed_repeatability_g: 0.0002 },
};

const answered = (change: object): Statement => stated({ ...ounce, ...change });
const row = (answer: Statement, input: string) => answer.budget.find((one) => one.input === input);

describe("degrees of freedom", () => {
  // GUM table G.2, 95.45 %: 2.65 for 5, 2.32 for 9 [from memory]; the input with them makes nearly the whole variance.
  it("of an immersed repeatability give its Student factor", () => {
    const balance = {
      readability_g: 0.0001,
      repeatability_g: 0.0001,
      immersed_repeatability_g: 0.01,
      immersed_repeatability_dof: 9,
    };
    expect(answered({ balance }).k).toBeCloseTo(2.32, 2);
    expect(answered({ balance: { ...balance, immersed_repeatability_dof: undefined } }).dof).toBeNull();
  });
  it("of a dry repeatability hold for both readings where the immersed one has no value of its own", () => {
    const balance = { readability_g: 0.0001, repeatability_g: 0.01, repeatability_dof: 9 };
    // the same s enters twice as two inputs of 9 degrees: Welch–Satterthwaite gives between 9 and 18
    const { dof } = answered({ balance });
    expect(dof).toBeGreaterThan(9);
    expect(dof).toBeLessThanOrEqual(18.01);
  });
  it("of a thermometer give its Student factor", () => {
    const liquid = { kind: "water", temperature_c: 20, temperature_u_c: 0.5, temperature_dof: 5 };
    const balance = { readability_g: 1e-5, repeatability_g: 1e-5 };
    // the other inputs hold half a percent of the variance, so that 5 degrees become 5.05 and 2.65 becomes 2.64
    const [dry, immersed] = ["31.10350", "28.14350"].map((text) => ({ readings: [text] }));
    const { k, dof } = answered({ liquid, balance, dry, immersed });
    expect(Math.abs(k - 2.65)).toBeLessThan(0.015);
    expect(dof).toBeCloseTo(5, 0);
  });
});

describe("the balance", () => {
  it("has steps of its own for the immersed reading", () => {
    const answer = answered({ balance: { ...ounce.balance, immersed_readability_g: 0.001 } });
    expect(row(answer, "immersed, resolution at load")?.u).toBeCloseTo(0.001 / Math.sqrt(12), 12);
    expect(row(answer, "dry, resolution at load")?.u).toBeCloseTo(0.0001 / Math.sqrt(12), 12);
  });
  it("may have a span that is off: seen to cancel in the density, and kept in the mass", () => {
    const plain = answered({});
    const off = answered({ balance: { ...ounce.balance, span_u_relative: 1e-4 } });
    expect(off.u_g_cm3).toBeCloseTo(plain.u_g_cm3, 8);
    expect(row(off, "balance span")?.u).toBe(1e-4);
    expect(off.u_mass_g).toBeCloseTo(Math.hypot(plain.u_mass_g, 31.1035e-4), 6);
  });
});

describe("the hanger", () => {
  // Surface tension of water at 20 °C: 72.74 mN/m (IAPWS R1-76(2014), table 1). Pull of the meniscus: π·d·σ/g.
  const pull = (Math.PI * 0.1 * 0.07274) / 9.80665;
  it("has a meniscus that changes by the stated part, and a depth that changes by the stated way", () => {
    const hanger = { wire_mm: 0.1, meniscus_change: 0.5, depth_mm: 3 };
    const answer = answered({ hanger: { ...hanger, zeroed: "immersed" } });
    expect(row(answer, "wire meniscus")?.u).toBeCloseTo((0.5 * pull) / Math.sqrt(3), 6);
    expect(row(answer, "wire immersion")?.u).toBeCloseTo(3 / Math.sqrt(3), 12);
  });
  it("comes off both readings where it hangs in both", () => {
    const both = answered({
      dry: { readings: ["34.6035"] },
      immersed: { readings: ["31.2435"] },
      hanger: {
        wire_mm: 0,
        zeroed: "weighed",
        in_liquid: { readings: ["3.1000"] },
        in_air: { readings: ["3.5000"] },
      },
    });
    expect(both.density_g_cm3).toBeCloseTo(answered({}).density_g_cm3, 9);
  });
});

describe("the water", () => {
  const water = (more: object) => answered({ liquid: { ...ounce.liquid, ...more } });
  it("is lighter with air in it, by 2.5 mg/L at 20 °C", () => {
    // Bignell 1983, Metrologia 19, 57: −4.612e-3 + 0.106e-3·t kg/m³, saturated [from memory]
    const lighter =
      water({ dissolved_air: "none" }).liquid_density_g_cm3! -
      water({ dissolved_air: "saturated" }).liquid_density_g_cm3!;
    expect(lighter * 1000).toBeCloseTo(0.004612 - 0.000106 * 20, 5);
  });
  it("is heavier with solids in it, and uncertain by a wetting agent, a gradient and its formula", () => {
    expect(water({ dissolved_solids_mg_l: 500 }).liquid_density_g_cm3!).toBeGreaterThan(
      water({ dissolved_solids_mg_l: 0 }).liquid_density_g_cm3! + 0.0003,
    );
    const said = water({ wetting_agent: true, gradient_c: 0.3, formula_u_kg_m3: 0.001 });
    expect(row(said, "wetting agent")?.u).toBeGreaterThan(0);
    expect(row(said, "temperature gradient")?.u).toBeCloseTo(0.3 / Math.sqrt(3), 12);
    expect(row(said, "water formula")?.u).toBe(0.001);
  });
});

describe("zeros and times", () => {
  it("before and after a load make a drift between them", () => {
    const immersed = { readings: ["28.1435"], zero_before: "0.0000", zero_after: "-0.0010" };
    expect(row(answered({ immersed }), "immersed, zero drift")?.u).toBeCloseTo(0.0005 / Math.sqrt(3), 12);
  });
  it("fit a drift out of a rise", () => {
    const { immersed: _, ...rest } = ounce;
    const timed = [
      { at_s: 0, zero: "0.0000" },
      { at_s: 60, zero: "-0.0010" },
      { at_s: 120, reading: "2.9580" },
      { at_s: 240, zero: "-0.0320" },
    ];
    const fitted = stated({ ...rest, method: "displaced", rise: { timed, lifted: "wet" } });
    const plain = stated({ ...rest, method: "displaced", rise: { readings: ["2.9600"] } });
    expect(fitted.density_g_cm3).toBeCloseTo(plain.density_g_cm3, 9);
  });
});

describe("load and air", () => {
  it("warm the full flask: 25 g of water 1 °C warmer leave 5 mg out", () => {
    // cubic expansion of water at 20 °C 2.07e-4, of borosilicate glass 1e-5 per °C (common practice): 25·1.97e-4 g
    const { immersed: _, ...rest } = ounce;
    const flask = { full: { readings: ["73.2110"] }, with_piece: { readings: ["101.3545"] } };
    const displacedBy = (more: object) => {
      const answer = stated({ ...rest, method: "flask", flask: { ...flask, ...more } });
      return answer.mass_g / answer.density_g_cm3;
    };
    const moved = displacedBy({ liquid_g: 25, warmer_c: 1, warmer_u_c: 0.1 }) - displacedBy({});
    expect(Math.abs(moved)).toBeGreaterThan(0.0045);
    expect(Math.abs(moved)).toBeLessThan(0.0054);
  });
  it("takes the air from temperature, pressure and humidity with their uncertainties", () => {
    // dry-ish room air is 1.2 kg/m³ near 20 °C and 1013 hPa (common practice)
    const air = { temperature_c: 20, pressure_hpa: 1013.25, humidity_pct: 50 };
    const known = answered({ air });
    expect(known.air_density_kg_m3).toBeCloseTo(1.199, 2);
    const vague = answered({ air: { ...air, temperature_u_c: 5, pressure_u_hpa: 20, humidity_u_pct: 20 } });
    expect(row(vague, "air density")!.u).toBeGreaterThan(5 * row(known, "air density")!.u);
  });
  it("pairs repeats that move together", () => {
    const dry = { readings: ["31.1030", "31.1034", "31.1038", "31.1042"] };
    const immersed = { readings: ["28.1430", "28.1434", "28.1438", "28.1442"] };
    expect(answered({ dry, immersed, paired: true }).u_g_cm3).toBeLessThan(
      answered({ dry, immersed }).u_g_cm3 / 1.5,
    );
  });
});
