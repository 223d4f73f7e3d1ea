import { describe, expect, it } from "vitest";
import { numericalTolerance } from "../../calibration/adaptive.ts";
import { sum } from "../../calibration/arithmetic.ts";
import { type Expression, Inputs } from "../../calibration/input.ts";
import { monteCarlo } from "../../calibration/monte-carlo.ts";
import { propagate, secondOrderU } from "../../calibration/propagation.ts";
import { seededRandom } from "../../calibration/random.ts";

// JCGM 101:2008, clause 9. "Exact" columns were computed from the closed laws; where the printed interval differs from
// the exact one in its last digit, the exact one is tested. Blocks of 16 384 quasi-random trials, at least four: the
// ends repeat to about 0.003 u, so 0.01 u is allowed where nothing else is said.
const seed = 9;

function additive(inputs: Inputs): Expression {
  return (a, of) => sum(a, inputs.all.map(of));
}

it("an input with more degrees of freedom than a number has digits is drawn from the normal law", () => {
  const inputs = new Inputs();
  inputs.student("thermometer", "°C", 21.4, 0.04, 4.2e61);
  const { u, interval } = monteCarlo(additive(inputs), inputs, seededRandom(seed), { confidence: 0.9545 });
  expect(u).toBeCloseTo(0.04, 4);
  expect(interval[0]).toBeCloseTo(21.32, 3);
  expect(interval[1]).toBeCloseTo(21.48, 3);
});

describe("JCGM 101:2008, 9.2 additive model", () => {
  it("9.2.2: four standard normal inputs give u = 2.00 and ±3.92", () => {
    const inputs = new Inputs();
    for (const i of [1, 2, 3, 4]) inputs.normal(`X${i}`, "", 0, 1);
    const result = monteCarlo(additive(inputs), inputs, seededRandom(seed), {
      confidence: 0.95,
      blocks: [16, 64],
    });
    expect(result.u).toBeCloseTo(2, 2);
    expect(Math.abs(result.interval[0] + 3.919928)).toBeLessThan(0.02);
    expect(Math.abs(result.interval[1] - 3.919928)).toBeLessThan(0.02);
  });

  it("9.2.3: four rectangular inputs of u = 1 give ±3.8794067, which the normal law misses", () => {
    const inputs = new Inputs();
    for (const i of [1, 2, 3, 4]) inputs.rectangular(`X${i}`, "", 0, Math.sqrt(3));
    const result = monteCarlo(additive(inputs), inputs, seededRandom(seed), {
      confidence: 0.95,
      blocks: [16, 64],
    });
    expect(propagate(additive(inputs), inputs).u).toBeCloseTo(2, 12);
    expect(Math.abs(result.interval[1] - 3.8794067)).toBeLessThan(0.01);
    expect(Math.abs(result.interval[0] + 3.8794067)).toBeLessThan(0.01);
  });

  it("9.2.4: with the fourth ten times wider the interval is ±17.0158141, not the normal law's ±19.9", () => {
    const inputs = new Inputs();
    for (const i of [1, 2, 3]) inputs.rectangular(`X${i}`, "", 0, Math.sqrt(3));
    inputs.rectangular("X4", "", 0, 10 * Math.sqrt(3));
    const result = monteCarlo(additive(inputs), inputs, seededRandom(seed), {
      confidence: 0.95,
      blocks: [16, 64],
    });
    expect(propagate(additive(inputs), inputs).u).toBeCloseTo(10.1488916, 7);
    expect(1.959963985 * propagate(additive(inputs), inputs).u).toBeCloseTo(19.8914621, 6);
    expect(Math.abs(result.interval[1] - 17.0158141)).toBeLessThan(0.03);
    expect(Math.abs(result.interval[0] + 17.0158141)).toBeLessThan(0.03);
  });
});

describe("JCGM 101:2008, 9.3 mass calibration", () => {
  const inputs = new Inputs();
  const conventional = inputs.normal("m_R,c", "mg", 100_000, 0.05);
  const added = inputs.normal("δm_R,c", "mg", 1.234, 0.02);
  const air = inputs.rectangular("ρ_a", "kg/m³", 1.2, 0.1);
  const weight = inputs.rectangular("ρ_W", "kg/m³", 8000, 1000);
  const reference = inputs.rectangular("ρ_R", "kg/m³", 8000, 50);
  const model: Expression = (a, of) => {
    const lift = a.minus(a.over(a.of(1), of(weight)), a.over(a.of(1), of(reference)));
    const factor = a.plus(a.of(1), a.times(a.minus(of(air), a.of(1.2)), lift));
    return a.minus(a.times(a.plus(of(conventional), of(added)), factor), a.of(100_000));
  };

  it("has u = 0.0539 mg to first order and 0.0750 mg with the second-order terms", () => {
    const result = propagate(model, inputs);
    expect(result.value).toBeCloseTo(1.234, 9);
    expect(result.u).toBeCloseTo(0.0538516, 7);
    // printed 0.0750; derivatives over a whole u add the fourth-order terms, a thousandth of it
    expect(secondOrderU(model, inputs)).toBeCloseTo(0.075, 3);
  });

  it("has u = 0.0755 mg by Monte Carlo, which does not validate the first-order interval", () => {
    const result = monteCarlo(model, inputs, seededRandom(seed), { confidence: 0.95, blocks: [16, 64] });
    expect(result.mean).toBeCloseTo(1.234, 3);
    expect(result.u).toBeCloseTo(0.0754, 3);
    // printed, shortest: [1.0834, 1.3825]; the law is symmetric, so equal tails agree within its numerical tolerance
    expect(Math.abs(result.interval[0] - 1.0834)).toBeLessThan(0.003);
    expect(Math.abs(result.interval[1] - 1.3825)).toBeLessThan(0.003);
    expect(Math.abs(result.interval[0] - 1.1285)).toBeGreaterThan(numericalTolerance(0.0754, 2));
  });
});

describe("JCGM 101:2008, 9.4 comparison loss", () => {
  // δY = X1² + X2² follows u²·χ′²(2, x1²/u²): mean 2u² + x1², variance 4u⁴ + 4u²x1². Here in units of 10⁻⁶.
  const loss = (x1: number) => {
    const inputs = new Inputs();
    const real = inputs.normal("X1", "", x1, 0.005);
    const imaginary = inputs.normal("X2", "", 0, 0.005);
    const model: Expression = (a, of) =>
      a.plus(a.times(of(real), of(real)), a.times(of(imaginary), of(imaginary)));
    return { inputs, model };
  };

  it("9.4.2: at x1 = 0 first order sees no uncertainty at all; the law has mean 50, u 50", () => {
    const { inputs, model } = loss(0);
    expect(propagate(model, inputs).u).toBe(0);
    expect(secondOrderU(model, inputs)).toBeCloseTo(50e-6, 9);
    const result = monteCarlo(model, inputs, seededRandom(seed), { confidence: 0.95, blocks: [16, 64] });
    expect(result.mean * 1e6).toBeCloseTo(50, 1);
    expect(Math.abs(result.u * 1e6 - 50)).toBeLessThan(0.2);
    // exponential with mean 2u² = 50: equal tails at −50·ln(0.975) and −50·ln(0.025)
    expect(Math.abs(result.interval[0] * 1e6 + 50 * Math.log(0.975))).toBeLessThan(0.02);
    expect(Math.abs(result.interval[1] * 1e6 + 50 * Math.log(0.025))).toBeLessThan(1);
  });

  it("9.4.2: at x1 = 0.050 the mean is 2550 and u 502.493781", () => {
    const { inputs, model } = loss(0.05);
    expect(propagate(model, inputs).u * 1e6).toBeCloseTo(500, 9);
    const result = monteCarlo(model, inputs, seededRandom(seed), { confidence: 0.95, blocks: [16, 64] });
    expect(Math.abs(result.mean * 1e6 - 2550)).toBeLessThan(0.5);
    expect(Math.abs(result.u * 1e6 - 502.493781)).toBeLessThan(1);
  });
});

describe("JCGM 101:2008, 9.5 gauge block", () => {
  const inputs = new Inputs();
  const standard = inputs.student("l_S", "nm", 50_000_623, 25, 18);
  const difference = inputs.student("d", "nm", 215, 6, 24);
  const random = inputs.student("d_1", "nm", 0, 4, 5);
  const systematic = inputs.student("d_2", "nm", 0, 7, 8);
  const alpha = inputs.rectangular("α_S", "1/°C", 11.5e-6, 2e-6);
  const average = inputs.normal("θ_0", "°C", -0.1, 0.2);
  // the arc sine law of a room that swings by 0.5 °C is the sine of an angle that may be any
  const angle = inputs.rectangular("angle of the swing", "rad", 0, Math.PI / 2);
  // a rectangle whose own half-width is known only to ± d: CTrap of 6.4.3
  const uncertainRectangle = (name: string, half: number, d: number) => ({
    half: inputs.rectangular(`${name}, half-width`, "", half, d),
    within: inputs.rectangular(name, "", 0, 1),
  });
  const deltaAlpha = uncertainRectangle("δα", 1e-6, 0.1e-6);
  const deltaTheta = uncertainRectangle("δθ", 0.05, 0.025);

  it("has mean 838, u = 36 nm and a 99 % interval of 745 to 932 nm by Monte Carlo", () => {
    // Inputs and printed results from memory of tables 10 and 11; numpy's 10⁷ trials of them (2.4.6): 838.0, 35.81, 744.3, 931.7.
    const excess: Expression = (a, of) => {
      const x = of(angle);
      const square = a.times(x, x);
      // sine by its series to x¹¹: good to 6·10⁻⁸ within a right angle
      const series = [-1 / 110, -1 / 72, -1 / 42, -1 / 20, -1 / 6].reduce(
        (inner, factor) => a.plus(a.of(1), a.times(a.times(square, a.of(factor)), inner)),
        a.of(1),
      );
      const theta = a.plus(of(average), a.times(a.times(x, series), a.of(0.5)));
      const expansion = a.times(of(deltaAlpha.half), of(deltaAlpha.within));
      const unlike = a.times(of(deltaTheta.half), of(deltaTheta.within));
      const warmth = a.plus(a.times(expansion, theta), a.times(of(alpha), unlike));
      const measured = sum(a, [of(difference), of(random), of(systematic)]);
      return a.minus(
        a.plus(a.minus(of(standard), a.of(50_000_000)), measured),
        a.times(of(standard), warmth),
      );
    };
    const result = monteCarlo(excess, inputs, seededRandom(seed), { confidence: 0.99, blocks: [64, 64] });
    expect(Math.abs(result.mean - 838)).toBeLessThan(0.2);
    expect(Math.round(result.u)).toBe(36);
    // a million trials place the ends of 99 % to about 0.3 nm; printed are whole nanometres
    expect(Math.abs(result.interval[0] - 744.3)).toBeLessThan(0.7);
    expect(Math.abs(result.interval[1] - 931.7)).toBeLessThan(0.7);
  });
});

describe("the numerical tolerance", () => {
  it("is half a unit of the last wanted digit of u", () => {
    // JCGM 101:2008, 7.9.2 examples: u = 0.000 35 g with two digits: 35 × 10⁻⁵, δ = 5 × 10⁻⁶; u = 2 K with one: 0.5 K
    expect(numericalTolerance(0.00035, 2)).toBeCloseTo(5e-6, 12);
    expect(numericalTolerance(2, 1)).toBe(0.5);
    // rounding first: 0.0998 with two digits is 0.10
    expect(numericalTolerance(0.0998, 2)).toBeCloseTo(0.005, 12);
  });
});
