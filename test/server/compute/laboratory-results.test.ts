import { expect, it } from "vitest";
import { compute, isError } from "../../../server/compute/compute.ts";
import { ounce, stated } from "./answers.ts";

/**
 * Gold 585 whose rest takes so much room, by the volumes of its two parts: 1/ρ = w/19.30 + (1 − w)·v, with the density of
 * gold from CRC Handbook of Chemistry and Physics [from memory]. Invented pieces; the rest of one maker, 0.1046 to 0.1054 cm³/g.
 */
const density = (w: number, restCm3PerG: number) => 1 / (w / 19.3 + (1 - w) * restCm3PerG);
const assayed = [0.1046, 0.1048, 0.105, 0.1052, 0.1054, 0.105].map((rest, i) => ({
  of: `an invented piece ${i + 1}`,
  permille: 586,
  u_permille: 0.3,
  density_20_g_cm3: density(0.586, rest),
  u_density_g_cm3: 0.003,
}));

/** 20 g with a density, in water of 20 °C and air of 1.2 kg/m³. */
function weighed(gPerCm3: number, change: object = {}) {
  const lost = (20 * (0.9982 - 0.0012)) / (gPerCm3 - 0.0012);
  return {
    ...ounce,
    dry: { readings: ["20.0000"] },
    immersed: { readings: [(20 - lost).toFixed(4)] },
    liquid: { kind: "water", temperature_c: 20, temperature_u_c: 0.02 },
    claim: "au-585",
    ...change,
  };
}

it("laboratory results on five other pieces of the claim narrow the fineness, and both ranges are said", () => {
  const alone = stated(weighed(density(0.586, 0.105))).fineness!;
  const { permille, laboratory_results: by } = stated(
    weighed(density(0.586, 0.105), { laboratory_results: assayed }),
  ).fineness!;
  expect(by).toMatchObject({ results: 6, narrows: true, like_them: { holds_stamp: true } });
  expect(by?.family.permille).toEqual(alone.permille);
  // Student's t of 5 degrees is 2.65 [from memory], s of the six is 0.0003: 0.105 ± 0.00084 cm³/g
  const [low, high] = by!.like_them!.rest_cm3_g;
  expect((low + high) / 2).toBeCloseTo(0.105, 4);
  expect((high - low) / 2 / 0.00084).toBeGreaterThan(0.9);
  expect((high - low) / 2 / 0.00084).toBeLessThan(1.5);
  expect(permille[0]).toBeLessThan(586);
  expect(permille[1]).toBeGreaterThan(586);
  expect(permille[1] - permille[0]).toBeLessThan((alone.permille[1] - alone.permille[0]) / 5);
});

it("fewer than five say nothing", () => {
  const alone = stated(weighed(density(0.586, 0.105))).fineness!;
  const few = stated(weighed(density(0.586, 0.105), { laboratory_results: assayed.slice(0, 4) })).fineness!;
  expect(few.permille).toEqual(alone.permille);
  expect(few.laboratory_results).toMatchObject({ results: 4, needed: 5, narrows: false });
  expect(few.laboratory_results?.like_them).toBeUndefined();
});

it("a piece that would not hold its stamp if it were like them keeps the whole family, and it is said", () => {
  const poor = density(0.5, 0.105);
  const alone = stated(weighed(poor));
  const { fineness, checks, conformity } = stated(weighed(poor, { laboratory_results: assayed }));
  expect(conformity.state).toBe(alone.conformity.state);
  expect(fineness?.permille).toEqual(alone.fineness?.permille);
  const { like_them: like, narrows } = fineness!.laboratory_results!;
  expect(narrows).toBe(false);
  expect(like?.holds_stamp).toBe(false);
  expect(like!.permille[0]).toBeLessThan(500);
  expect(like!.permille[1]).toBeGreaterThan(500);
  expect(checks.map(({ code, severity }) => `${severity} ${code}`)).toContain(
    "warn conformity.unlike-results",
  );
});

it("results that look closer together than they are known count as what they are known to", () => {
  const same = assayed.map((one) => ({ ...one, ...assayed[2], u_density_g_cm3: 0.02 }));
  const { rest_cm3_g } = stated(weighed(density(0.586, 0.105), { laboratory_results: same })).fineness!
    .laboratory_results!.like_them!;
  // 0.02/13.2² over the rest's share of 0.414 is 0.00028 cm³/g; 2.65·√(1 + 1/6) of it to either side
  expect((rest_cm3_g[1] - rest_cm3_g[0]) / 2).toBeGreaterThan(0.0007);
});

it("without a claim they are of no claim", () => {
  const answer = compute({ ...weighed(13.2), claim: undefined, laboratory_results: assayed });
  expect(isError(answer) && answer.error.at).toBe("laboratory_results");
});
