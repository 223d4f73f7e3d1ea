import { expect, test } from "vitest";
import { compute } from "../../../server/compute/compute.ts";

/** An ounce of fine silver, soundly weighed; invented. */
const sound = {
  id: "g",
  method: "hung",
  dry: { readings: ["31.1035"] },
  immersed: { readings: ["28.1435"] },
  liquid: { kind: "water", temperature_c: 21.4, temperature_u_c: 0.06 },
  air: { density_kg_m3: 1.19, u_kg_m3: 0.017 },
  balance: { readability_g: 0.0001, repeatability_g: 0.0001, immersed_repeatability_g: 0.0003 },
  claim: "ag-999",
} as const;
const of = (...readings: string[]) => ({ readings });
const { immersed: _, ...withoutWet } = sound;
const risen = (...rise: string[]) => ({ ...withoutWet, method: "displaced", rise: of(...rise) });
const filled = (full: string[], with_piece: string[]) => ({
  ...withoutWet,
  method: "flask",
  flask: { full: of(...full), with_piece: of(...with_piece) },
});

// each gross error of the trade (common practice), as it shows in the readings; numbers invented
test.each([
  ["bottom, the whole piece", { ...sound, immersed: of("0.0002") }, "check.nothing-on-hook"],
  ["bottom, the whole piece, beaker", risen("31.0900"), "check.rests-on-bottom"],
  [
    "bottom, after three good readings",
    { ...sound, immersed: of("28.1435", "28.1437", "28.1433", "17.2000") },
    "check.scatter-contradicts",
  ],
  ["not covered", { ...sound, immersed: of("29.8579") }, "check.not-covered"],
  ["not covered, beaker", risen("0.9335"), "check.not-covered"],
  ["hanger in the immersed reading only", { ...sound, immersed: of("30.0935") }, "check.not-covered"],
  ["beaker not zeroed", risen("203.1200"), "check.boxes-swapped"],
  ["swapped", { ...sound, dry: of("28.1435"), immersed: of("31.1035") }, "check.boxes-swapped"],
  ["swapped, beaker", { ...risen("31.1035"), dry: of("2.9600") }, "check.boxes-swapped"],
  ["rise given as immersed reading", { ...sound, immersed: of("2.9600") }, "check.displaced-for-immersed"],
  ["immersed reading given as rise", risen("28.1435"), "check.displaced-for-immersed"],
  ["another unit beside g", { ...sound, dry: { readings: ["155.5175"], unit: "ct" } }, "check.units-mixed"],
  ["carat written as g", { ...sound, dry: of("155.5175") }, "check.rests-on-bottom"],
  [
    "another piece among the dry readings",
    { ...sound, dry: of("31.1035", "31.2240") },
    "check.dry-readings-differ",
  ],
  ["water forgotten", { ...sound, immersed: of("31.1035") }, "check.displacement-negative"],
  ["water forgotten, beaker", risen("0.0001"), "check.nothing-on-hook"],
  ["empty pan", { ...sound, dry: of("0.0002") }, "check.mass-not-expected"],
  ["floats", { ...sound, immersed: of("-0.4000") }, "check.floats"],
  ["a display frozen since the full flask", filled(["73.2110"], ["73.2110"]), "check.display-stuck"],
  ["Fahrenheit", { ...sound, liquid: { ...sound.liquid, temperature_c: 68 } }, "liquid.temperature_c"],
  [
    "warming water",
    { ...sound, dry: of("311.0350"), immersed: of("281.4350", "281.4368", "281.4386", "281.4404") },
    "check.still-climbing",
  ],
  [
    "creep",
    { ...sound, dry: of("7.9881"), immersed: of("7.5320", "7.5356"), claim: "au-916" },
    "check.scatter-contradicts",
  ],
  [
    "filling that scatters",
    filled(["73.2110", "73.2310"], ["101.3545", "101.3546"]),
    "check.scatter-contradicts",
  ],
])("%s stops, and nothing is said of the claim", (_name, request, code) => {
  const answer = compute(request);
  if ("error" in answer) {
    expect(answer.error.at).toBe(code);
    return;
  }
  const stop = answer.checks.find((one) => one.code === code);
  expect(stop?.severity, answer.checks.map((one) => one.code).join(", ")).toBe("stop");
  expect(stop?.remedies.length).toBeGreaterThan(0);
  expect(answer.conformity.state).toBe("no-valid-reading");
  expect(answer.not_excluded).toEqual([]);
  expect(answer.fineness).toBeNull();
  const judged = answer.checks.filter((one) => /claim$/.test(one.code));
  expect(judged).toEqual([]);
});

test.each([
  ["a bubble", { ...sound, immersed: of("28.1235") }, "check.lower-than-claim"],
  [
    "the wall, or part of the weight on the bottom",
    { ...sound, immersed: of("27.5000") },
    "check.lower-than-claim",
  ],
  [
    "a capsule or holder about the piece",
    { ...sound, dry: of("33.0535"), immersed: of("28.4535") },
    "check.lower-than-claim",
  ],
  ["fewer decimals", { ...sound, dry: of("31.10") }, "measurement.coarse-digits"],
  [
    "decimals lost in one of the dry readings",
    { ...sound, dry: of("31.1030", "31.103") },
    "check.decimals-changed",
  ],
  [
    "a frozen display",
    { ...sound, immersed: of("28.1435", "28.1435", "28.1435", "28.1435", "28.1435") },
    "check.display-stuck",
  ],
  [
    "looks at one load that was not lifted",
    { ...sound, immersed: of("28.1435", "28.1435", "28.1434", "28.1435", "28.1435", "28.1435") },
    "check.scatters-little",
  ],
  ["an automatic zero, or evaporation", risen("2.9600"), "measurement.no-zero-after"],
  ["one filling of a flask", filled(["73.2110"], ["101.3545"]), "measurement.flask-filling"],
  [
    "a liquid without its temperature",
    {
      ...sound,
      liquid: { kind: "stated", name: "ethanol", density_g_cm3: 0.789, u_g_cm3: 0.0005, temperature_c: 25 },
    },
    "measurement.liquid-stated-at",
  ],
])("%s is told beside the result", (_name, request, code) => {
  const answer = compute(request);
  if ("error" in answer) throw new Error(JSON.stringify(answer.error));
  expect(answer.checks.map((one) => [one.code, one.severity])).toContainEqual([code, "warn"]);
});

// roundings of ±5 mg at load alone give u(D) = √2 × 2.9 mg, those at zero as much again; U(ρ) = ρ·2u(D)/D with D = 2.96 g
test("readings that show coarser places than the stated step are as uncertain as they show", () => {
  const answer = compute({ ...sound, dry: of("31.10"), immersed: of("28.14") });
  if ("error" in answer) throw new Error(JSON.stringify(answer.error));
  expect(answer.expanded_g_cm3).toBeGreaterThan((10.48 * 2 * Math.SQRT2 * 0.00289) / 2.96);
  expect(answer.expanded_g_cm3).toBeLessThan((10.48 * 2 * 2 * 0.0031) / 2.96);
});

test("a bubble is named only where one of that size clings unseen", () => {
  const seen = (immersed: string) => {
    const answer = compute({ ...sound, immersed: of(immersed) });
    if ("error" in answer) throw new Error(JSON.stringify(answer.error));
    return answer.checks.find(({ code }) => code === "check.lower-than-claim")?.params;
  };
  // 20 mg are a sphere of 3.4 mm, 644 mg one of 10.7 mm
  expect(seen("28.1235")).toMatchObject({ bubble: "yes" });
  expect(seen("27.5000")).toMatchObject({ bubble: "no" });
});

test.each([
  [1050, "measurement.liquid-range"],
  [0.001, "measurement.liquid-range"],
])("a liquid of %s g/cm³ is refused at its key", (density_g_cm3, code) => {
  const liquid = { kind: "stated", name: "ethanol", density_g_cm3, u_g_cm3: 0.0005, temperature_c: 20 };
  const answer = compute({ ...sound, liquid });
  expect("error" in answer && answer.error).toMatchObject({ at: "liquid.density_g_cm3", message: { code } });
});

test("the reading that touched the bottom is named by its role, its place and its value, to be excluded alone", () => {
  const answer = compute({ ...sound, immersed: of("28.1435", "28.1437", "28.1433", "17.2000") });
  if ("error" in answer) throw new Error(JSON.stringify(answer.error));
  const [stop] = answer.checks;
  expect(stop?.code).toBe("check.scatter-contradicts");
  expect(stop?.params).toMatchObject({ role: "immersed", index: 3, value_g: 17.2, side: "low" });
  expect(stop?.remedies[0]?.offer).toEqual({ do: "exclude", role: "wet", places: [3] });
});

test("a run that the zero made as well is evaporation between two looks at it, not bubbles", () => {
  const rise = { readings: ["2.960", "2.959", "2.957", "2.957", "2.955", "2.953"], zero_before: "0.000" };
  const balance = { readability_g: 0.001, repeatability_g: 0.0007, immersed_repeatability_g: 0.0012 };
  const dry = of("31.103");
  const answer = (zero_after: string) => {
    const got = compute({ ...risen(), dry, balance, rise: { ...rise, zero_after } });
    if ("error" in got) throw new Error(JSON.stringify(got.error));
    return got.checks.filter(({ severity }) => severity === "stop").map(({ code }) => code);
  };
  expect(answer("-0.007")).toEqual([]);
  expect(answer("0.000")).toContain("check.still-climbing");
});

test("what no body can give has no density either", () => {
  for (const immersed of ["-0.4000", "29.8579", "30.1700"]) {
    const answer = compute({ ...sound, immersed: of(immersed) });
    if ("error" in answer) throw new Error(JSON.stringify(answer.error));
    expect(answer.density_g_cm3).toBeNull();
  }
});

test("a second balance under the immersed reading has a span of its own", () => {
  const second = { ...sound.balance, span_u_relative: 1e-4 };
  const answer = compute({
    ...sound,
    balance: { ...sound.balance, span_u_relative: 1e-4 },
    immersed: { ...sound.immersed, balance: second },
  });
  if ("error" in answer || answer.u_g_cm3 === null) throw new Error(JSON.stringify(answer));
  // two spans of 1e-4 that do not cancel: u(D) = 1e-4·√(R² + W²), and the dry reading counts in R/D as well
  const [dry, wet] = [31.1035, 28.1435];
  const expected = (10.4735 * 1e-4 * Math.hypot(1 - dry / (dry - wet), wet / (dry - wet))) as number;
  const spans = answer.budget.filter(({ input }) => input.includes("span"));
  expect(Math.hypot(...spans.map((row) => row.contribution_g_cm3))).toBeCloseTo(expected, 5);
});

test.each([
  ["displaces more than the whole", { mass_g: 12, density_g_cm3: 3.52 }, "measurement.added-fill"],
  ["weighs more than the whole", { mass_g: 32, density_g_cm3: 13 }, "measurement.added-outweigh"],
])("a stone that %s is refused at its key", (_what, stone, code) => {
  const added = [{ name: "stone", u_mass_g: 0.005, u_density_g_cm3: 0.01, ...stone }];
  const answer = compute({ ...sound, added });
  expect("error" in answer && answer.error).toMatchObject({ at: "added", message: { code } });
});

test("a stone that leaves a metal denser than any has no density", () => {
  const added = [{ name: "stone", mass_g: 7, u_mass_g: 0.005, density_g_cm3: 3.52, u_density_g_cm3: 0.01 }];
  const answer = compute({ ...sound, added });
  if ("error" in answer) throw new Error(JSON.stringify(answer.error));
  expect(answer.checks[0]?.code).toBe("check.denser-than-osmium");
  expect([answer.density_g_cm3, answer.conformity.state]).toEqual([null, "no-valid-reading"]);
});
