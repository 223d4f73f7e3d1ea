import { expect, test } from "vitest";
import type { Code } from "../../../../calibration/message.ts";
import { planFor } from "../../../../server/conformity/plan/plan.ts";
import { planTable } from "../../../../server/conformity/plan/plan-table.ts";
import type { Plan } from "../../../../server/conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../../../../server/conformity/plan/planned-weighing.ts";
import { refusalOf } from "../../../refusal-of.ts";

/** The values of one of the sentences of a plan. */
const said = ({ message }: Plan, code: Code) => message.find((one) => one.code === code)?.params;

const ounceOfSilver: PlannedWeighing = {
  claim: "ag-999",
  massG: 31.1035,
  method: "displaced",
  pieces: 1,
  readabilityG: 0.1,
  confidence: 0.9545,
};

test("a 0.1 g scale tells an ounce of silver from copper and brass, not from 925, and says what would", () => {
  const plan = planFor(ounceOfSilver);
  // 31.1035 g / 10.50 × (0.9982 − 0.0012) / (1 − 0.0012/10.5) g
  expect(plan.expected.displacedG).toBeCloseTo(2.954, 3);
  const excluded = plan.excludes.map((m) => m.id);
  expect(excluded).toEqual(expect.arrayContaining(["el-cu", "brass-c260"]));
  expect(excluded).not.toContain("ag-800");
  expect(plan.state).toBe("inconclusive");
  expect(plan.remedies.map((r) => r.kind)).toContain("readability");
  expect(said(plan, "plan.expected")).toMatchObject({ displaced_g: { decimal: "3.0" } });
});

test("the readability a plan recommends does decide", () => {
  const plan = planFor(ounceOfSilver);
  const finer = plan.remedies.find((r) => r.kind === "readability")!;
  const again = planFor({ ...ounceOfSilver, readabilityG: finer.value as number });
  expect(again.state).toBe("consistent-not-unique");
  expect(again.remedies).toEqual([]);
});

test("a 1 g kitchen scale on one small coin is not possible, and pooling is offered", () => {
  const plan = planFor({ ...ounceOfSilver, massG: 8, readabilityG: 1 });
  expect(plan.possible).toBe(false);
  expect(said(plan, "plan.not-possible")).toEqual({ displaced_g: { decimal: "0.76" }, step_g: 1 });
  expect(plan.remedies.length).toBeGreaterThan(0);
});

test("no scale at all excludes tungsten from fine gold, and the plan says so before the piece is wet", () => {
  const plan = planFor({ ...ounceOfSilver, claim: "au-999", readabilityG: 0.0001, method: "hung" });
  expect(plan.cannotExclude.map(({ metal }) => metal.id)).toEqual(
    expect.arrayContaining(["w-pure", "w-core-au"]),
  );
  expect(said(plan, "plan.never-excludes")?.names).toContainEqual({ metal: "w-pure" });
});

test("nonsense is refused with what would be right", () => {
  const refused = (change: Partial<PlannedWeighing>) =>
    refusalOf(() => planFor({ ...ounceOfSilver, ...change }));
  expect(refused({ massG: 0 })).toMatchObject({
    code: "plan.refusal.mass",
    params: { mass_g: 0 },
    at: "mass",
  });
  expect(refused({ pieces: 1.5 })).toMatchObject({ code: "plan.refusal.pieces", params: { pieces: 1.5 } });
  expect(refused({ claim: "silver" })).toMatchObject({
    code: "metal.refusal.unknown",
    params: { id: "silver" },
  });
  expect(() => planFor({ ...ounceOfSilver, celsius: 60 })).toThrow(/40/);
});

test("the table for the wall agrees with the trade's rule-of-thumb model", () => {
  // own hand model: two roundings and half a step of scatter a reading, 1 mg of bubbles, ±1 °C: it gives for gold
  // 8 g 4.3/3.2 %, 31.1 g 1.1/0.81 % at 0.01 g (hung/displaced), silver 31.1 g 5.8/4.3 % at 0.1 g. 5 % for its two figures
  const table = (claim: string, method: "hung" | "displaced", mass: number, d: number) =>
    planTable({ claim, method, pieces: 1, confidence: 0.9545, uCelsius: 0.58 }, [mass], [d]).rows[0]!
      .percents[0]!;
  for (const [claim, method, mass, d, percent] of [
    ["el-au", "hung", 8, 0.01, 4.3],
    ["el-au", "displaced", 8, 0.01, 3.2],
    ["el-au", "hung", 31.1, 0.01, 1.1],
    ["el-au", "displaced", 31.1, 0.01, 0.81],
    ["el-ag", "hung", 31.1, 0.1, 5.8],
    ["el-ag", "displaced", 31.1, 0.1, 4.3],
  ] as const)
    expect(table(claim, method, mass, d) / percent, `${claim} ${method} ${mass} g`).toBeCloseTo(1, 1);
});

test("a scale that cannot see the displaced mass leaves a blank in the table", () => {
  const { rows } = planTable(
    { claim: "el-au", method: "hung", pieces: 1, confidence: 0.9545 },
    [1, 100],
    [1, 0.001],
  );
  expect(rows[0]!.percents[0]).toBeNull();
  expect(rows[1]!.percents[1]!).toBeLessThan(0.1);
});

test("ten pieces weighed together answer more, but odd ones hide in the mean and the plan counts them", () => {
  const plan = planFor({ ...ounceOfSilver, pieces: 10 });
  expect(plan.expandedPercent).toBeLessThan(planFor(ounceOfSilver).expandedPercent / 5);
  expect(plan.pooled.length).toBeGreaterThan(0);
  const [kind] = plan.pooled;
  expect(kind!.hidden).toBeGreaterThanOrEqual(1);
  expect(said(plan, "plan.mean-only")).toEqual({ pieces: 10 });
  expect(said(plan, "plan.hidden-in-mean")?.kinds).toContainEqual({
    code: "plan.hidden-kind",
    params: { n: kind!.hidden, metal: kind!.called },
  });
  expect(planFor(ounceOfSilver).pooled).toEqual([]);
});

test("a flask is planned with its two fillings: small scrap by the hundred, and its temperature in the budget", () => {
  const grains: PlannedWeighing = {
    claim: "au-750",
    massG: 0.2,
    pieces: 100,
    method: "flask",
    readabilityG: 0.001,
    confidence: 0.9545,
  };
  const plan = planFor(grains);
  // 20 g of 750 gold at 15.2 to 15.8 g/cm³ displace 1.26 to 1.31 g of water (by hand)
  expect(plan.expected.displacedG).toBeGreaterThan(1.25);
  expect(plan.expected.displacedG).toBeLessThan(1.32);
  // by hand, as standard uncertainties: two fillings at 2 mg and 10 mL · 2.07e-4/°C · 0.1 °C = 0.2 mg give 2.8 mg of
  // 1.28 g, so 0.22 %, twice that expanded; a tenth of it for what else a budget holds
  expect(plan.expandedPercent).toBeGreaterThan(0.4);
  expect(plan.expandedPercent).toBeLessThan(0.52);
  expect(planFor({ ...grains, readabilityG: 0.0001 }).expandedPercent).toBeGreaterThan(0.4);
});
