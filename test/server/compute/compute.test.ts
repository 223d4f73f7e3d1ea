import { describe, expect, it } from "vitest";
import { compute, isError } from "../../../server/compute/compute.ts";
import { evaluationOf, isRefused } from "../../../server/compute/evaluation.ts";
import { answerLine } from "../../../server/compute/lines.ts";
import { ounce, stated } from "./answers.ts";

const answered = stated;

function refused(request: unknown) {
  const answer = compute(request);
  if (!isError(answer)) throw new Error("expected a refusal");
  return answer;
}

describe("compute", () => {
  it("answers with every key of the contract", () => {
    expect(Object.keys(answered(ounce)).sort()).toEqual(
      [
        "id",
        "density_g_cm3",
        "u_g_cm3",
        "dof",
        "k",
        "expanded_g_cm3",
        "interval_g_cm3",
        "interval_from",
        "density_20_g_cm3",
        "relative_density",
        "mass_g",
        "u_mass_g",
        "volume_cm3",
        "u_volume_cm3",
        "liquid_density_g_cm3",
        "air_density_kg_m3",
        "budget",
        "checks",
        "conformity",
        "not_excluded",
        "excluded_by_tests",
        "fineness",
        "cautions",
        "next_tests",
        "answer",
        "versions",
      ].sort(),
    );
  });

  it("puts fine silver at 10.4746 g/cm³ and does not exclude the claim", () => {
    const answer = answered(ounce);
    expect(answer.density_g_cm3).toBeCloseTo(10.4746, 4);
    expect(answer.not_excluded[0]).toMatchObject({ id: "ag-999", kind: "metal", likelihood_ratio: 1 });
    expect(answer.conformity).toMatchObject({ claim: "ag-999", state: "consistent-not-unique" });
  });

  it("says what is not excluded when nothing is claimed", () => {
    const { claim: _, ...unclaimed } = ounce;
    const answer = answered(unclaimed);
    expect(answer.conformity).toMatchObject({ claim: null, state: "no-claim" });
    expect(answer.not_excluded.map(({ id }) => id)).toContain("ag-999");
  });

  it("has a budget whose shares add up to one and whose contributions add up to u", () => {
    const { budget, u_g_cm3 } = answered(ounce);
    expect(budget.reduce((total, row) => total + row.share, 0)).toBeCloseTo(1, 12);
    expect(Math.hypot(...budget.map((row) => row.contribution_g_cm3))).toBeCloseTo(u_g_cm3, 12);
  });

  it("gives the same density whether displaced mass was read as a rise or as two readings", () => {
    const { immersed: _, ...rest } = ounce;
    const rise = answered({ ...rest, method: "displaced", rise: { readings: ["2.9600"] } });
    const flask = answered({
      ...rest,
      method: "flask",
      flask: { full: { readings: ["73.2110"] }, with_piece: { readings: ["101.3545"] } },
    });
    expect(rise.density_g_cm3).toBeCloseTo(answered(ounce).density_g_cm3, 12);
    expect(flask.density_g_cm3).toBeCloseTo(rise.density_g_cm3, 12);
    expect(flask.u_g_cm3).toBeGreaterThan(rise.u_g_cm3);
  });

  it("gives the same answer twice, digit for digit", () => {
    const kitchen = { ...ounce, balance: { readability_g: 0.1, repeatability_g: 0.1 } };
    expect(answered(kitchen).interval_from).toBe("monte-carlo");
    expect(answered(kitchen)).toEqual(answered(kitchen));
  });

  it("refuses a reading given as a JSON number and says why", () => {
    const answer = refused({ ...ounce, dry: { readings: [31.1] } });
    expect(answer).toMatchObject({ id: "a1", error: { at: "dry.readings[0]" } });
    expect(answer.error.message).toEqual({
      code: "compute.request.reading-number",
      params: { given: "31.1" },
    });
  });

  it("refuses unknown keys wherever they stand", () => {
    expect(refused({ ...ounce, colour: "yellow" }).error.at).toBe("colour");
    expect(refused({ ...ounce, balance: { ...ounce.balance, readibility_g: 1 } }).error.at).toBe(
      "balance.readibility_g",
    );
    expect(refused({ ...ounce, air: { altitude_m: 3, u_kg_m3: 1 } }).error.at).toBe("air.u_kg_m3");
    expect(refused({ ...ounce, rise: { readings: ["1"] } }).error.at).toBe("rise");
  });

  it.each([
    [
      { balance: { readability_g: 0.1 } },
      "balance.repeatability_g",
      { code: "compute.key.type", params: { key: "repeatability_g", stands: "nothing", expected: "number" } },
    ],
    [
      { balance: { ...ounce.balance, linearity_g: -1 } },
      "balance.linearity_g",
      { code: "compute.key.small", params: { given: "-1", bound: "from", least: 0 } },
    ],
    [{ confidence: 2 }, "confidence", { code: "compute.key.big", params: { given: "2", most: 0.9999 } }],
    [{ pieces: 1.5 }, "pieces", { code: "compute.key.type", params: { given: "1.5", expected: "int" } }],
    [{ pieces: "2" }, "pieces", { code: "compute.key.type", params: { given: '"2"', expected: "number" } }],
    [
      { method: "hanging" },
      "method",
      {
        code: "compute.key.choice",
        params: {
          given: '"hanging"',
          options: { anyOf: ['"hung"', '"displaced"', '"flask"', '"dimensions"'] },
        },
      },
    ],
    [
      { liquid: {} },
      "liquid.kind",
      {
        code: "compute.key.choice",
        params: { stands: "nothing", options: { anyOf: ['"water"', '"stated"', '"measured"'] } },
      },
    ],
    [
      { dry: undefined },
      "dry",
      { code: "compute.key.type", params: { stands: "nothing", expected: "object" } },
    ],
  ])("names what stands there and what would be right: %j", (change, at, message) => {
    const { error } = refused({ ...ounce, ...change });
    expect(error.at).toBe(at);
    expect(error.message).toMatchObject(message);
  });

  it("refuses hot water, heavy air and a claim the library does not know, each at its place", () => {
    expect(refused({ ...ounce, air: { density_kg_m3: 1190, u_kg_m3: 17 } }).error).toMatchObject({
      at: "air.density_kg_m3",
      message: { code: "measurement.air-range", params: { quantity: "kg-per-m3", value: 1190 } },
    });
    const hot = refused({ ...ounce, liquid: { kind: "water", temperature_c: 70 } });
    expect(hot.error).toMatchObject({
      at: "liquid.temperature_c",
      message: { code: "measurement.water-range", params: { celsius: 70, from: 0, to: 40 } },
    });
    expect(refused({ ...ounce, claim: "ag-9999999" }).error.at).toBe("claim");
  });

  it("refuses a piece whose displaced mass drowns in the display's step", () => {
    const answer = refused({
      ...ounce,
      dry: { readings: ["1.0"] },
      immersed: { readings: ["0.9"] },
      balance: { readability_g: 0.1, repeatability_g: 0.1 },
    });
    expect(answer.error).toMatchObject({
      at: "immersed",
      message: { code: "measurement.displaced-within-uncertainty" },
    });
  });

  it("answers a line that is no JSON without an id, and an empty line not at all", () => {
    expect(answerLine("{not json")?.answer).toMatchObject({ id: null, error: { at: "" } });
    expect(answerLine("   ")).toBeNull();
    expect(answerLine('"text"')?.answer).toMatchObject({ id: null });
  });

  it("adds a verdict on the claim's limits when a rule was agreed, and changes nothing else", () => {
    const ruled = answered({ ...ounce, decision_rule: { kind: "guard-band" } });
    const { decision, global_risk, ...same } = ruled.conformity;
    expect({ ...ruled, conformity: same }).toEqual(answered(ounce));
    const evaluated = evaluationOf(ounce);
    if (isRefused(evaluated)) throw new Error(evaluated.refused.code);
    const { global_risk: unruled } = evaluated.statement.conformity;
    // a guard band lets less through than the rule that excludes only what the interval does not touch
    expect(global_risk!.consumers).toBeLessThan(unruled!.consumers);
    expect(global_risk!.producers).toBeGreaterThan(unruled!.producers);
    expect(decision).toMatchObject({ rule: { kind: "guard-band", multiple: 1 } });
    expect(refused({ ...ounce, claim: undefined, decision_rule: { kind: "simple" } }).error).toMatchObject({
      at: "decision_rule",
      message: { code: "compute.rule-without-claim" },
    });
    expect(refused({ ...ounce, decision_rule: { kind: "coin-toss" } }).error.at).toBe("decision_rule.kind");
  });
});
