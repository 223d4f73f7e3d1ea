import { expect, test } from "vitest";
import { normalBelow, normalQuantile } from "../../../calibration/normal.ts";
import {
  acceptanceInterval,
  conformanceProbability,
  decide,
  distanceForConformance,
  guardBandOfU,
  passAndConditional,
  simpleAcceptance,
} from "../../../server/conformity/decision-rule.ts";
import { globalRisk } from "../../../server/conformity/global-risk.ts";
import { normally } from "./normally.ts";

test("distances for one-sided conformance are those of JCGM 106 Table 1", () => {
  // Table 1 prints 0.84 1.28 1.64 2.33 3.09 (from memory): half a unit of the last digit
  const printed = [
    [0.8, 0.84],
    [0.9, 1.28],
    [0.95, 1.64],
    [0.99, 2.33],
    [0.999, 3.09],
  ] as const;
  for (const [p, z] of printed) expect(Math.abs(distanceForConformance(p) - z)).toBeLessThanOrEqual(0.00501);
});

test("JCGM 106 clause 7.3: a breakdown voltage of −5.47 V, u 0.05 V, limit −5.40 V conforms with 92 %", () => {
  const p = conformanceProbability({ high: -5.4 }, (x) => normalBelow((x + 5.47) / 0.05));
  // printed as about 92 % (from memory); Φ(1.4) = 0.9192433 to seven figures
  expect(p).toBeCloseTo(0.9192433, 6);
});

test("a value on the guarded limit w = U = 2u conforms with 97.7 %, so the rule risks at most 2.3 %", () => {
  const decision = decide(normally(9.98, 0.01), { high: 10 }, guardBandOfU);
  expect(decision.conformanceProbability).toBeCloseTo(0.9772499, 6); // Φ(2)
  expect(decision.worstAcceptanceRisk).toBeCloseTo(1 - 0.9772499, 6);
});

test("simple acceptance risks one half at the limit, as ILAC-G8 says", () => {
  expect(decide(normally(10, 0.01), { high: 10 }, simpleAcceptance).worstAcceptanceRisk).toBeCloseTo(0.5, 9);
});

test("the acceptance interval is empty when the guard bands meet, and nothing is then accepted", () => {
  expect(acceptanceInterval({ low: 10.3, high: 10.4 }, 0.06, guardBandOfU)).toBe("empty");
  const decision = decide(normally(10.35, 0.03), { low: 10.3, high: 10.4 }, guardBandOfU);
  expect(decision.verdict).toBe("fail");
  expect(decision.acceptance).toBe("empty");
});

test("a two-sided tolerance uses both limits", () => {
  const p = conformanceProbability({ low: -1, high: 1 }, (x) => normalBelow(x));
  expect(p).toBeCloseTo(0.6826894921, 9); // Φ(1) − Φ(−1)
});

test("JCGM 106 clause 9.5.4, ball bearings: Γ(4, ¼) µm, limit 2 µm, u 0.25 µm", () => {
  const density = (x: number) => (x ** 3 * Math.exp(-x / 0.25)) / (6 * 0.25 ** 4);
  const slice = 0.001; // µm; the limit of 2 µm falls between two of them
  const gamma = Array.from({ length: 20_000 }, (_, i) => ({
    from: i * slice,
    to: (i + 1) * slice,
    share: slice * density((i + 0.5) * slice),
  }));
  const risk = globalRisk(gamma, 0.25, { high: 2 }, { high: 2 });
  // Sandia's public notebook of the example prints 0.04238011 and 0.00801911; the producer's risk is computed
  expect(risk.nonConforming).toBeCloseTo(0.04238011, 7);
  expect(risk.consumers).toBeCloseTo(0.00801911, 7);
  expect(risk.producers).toBeCloseTo(0.0174446, 6);
  // its guard band of 0.32817123 brings the consumer's risk to 0.1 %
  const guarded = globalRisk(gamma, 0.25, { high: 2 }, { high: 2 - 0.32817123 });
  expect(guarded.consumers).toBeCloseTo(0.001, 7);
});

test("ILAC-G8's four answers follow the value through the limit", () => {
  const verdict = (value: number) => decide(normally(value, 0.05), { high: 10 }, passAndConditional).verdict;
  expect([9.85, 9.95, 10.05, 10.15].map(verdict)).toEqual([
    "pass",
    "conditional-pass",
    "conditional-fail",
    "fail",
  ]);
});

test("the normal distribution matches its tables in the middle and far out", () => {
  // Φ(1.96) = 0.9750021048517795; 1 − Φ(6) = 9.865876450376981e-10 (Abramowitz & Stegun tables, digits computed)
  expect(normalBelow(1.96)).toBeCloseTo(0.9750021048517795, 14);
  expect(normalBelow(-6) / 9.865876450376981e-10).toBeCloseTo(1, 10);
  expect(normalQuantile(0.97725)).toBeCloseTo(2.00000244, 6);
});
