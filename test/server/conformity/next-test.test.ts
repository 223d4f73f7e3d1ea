import { expect, test } from "vitest";
import { guardBandOfU } from "../../../server/conformity/decision-rule.ts";
import { nextTests } from "../../../server/conformity/next-test.ts";
import { separation, separationBy } from "../../../server/conformity/separation.ts";
import { metal } from "../../../server/metals/library.ts";
import { normally } from "./normally.ts";
import { stands } from "./stands.ts";

const of = (...ids: string[]) => ids.map((id) => metal(id));
const first = (...given: Parameters<typeof nextTests>) => nextTests(...given)[0];

test("steel beside brass calls for a magnet", () => {
  expect(first(of("steel-c"), metal("brass-c260"))?.test).toBe("magnet");
});

test("lead alloys beside silver call first for what everybody has, and for a probe after that", () => {
  const next = nextTests(of("pb-sn", "pb-sb6"), metal("ag-999"));
  expect(next[0]).toEqual({ test: "magnet", separates: ["pb-sn", "pb-sb6"] });
  expect(next.map(({ test }) => test)).toEqual(["magnet", "ring", "conductivity", "sound"]);
});

test("a test that was done is not proposed again", () => {
  const done = ["conductivity", "magnet", "ring"] as const;
  expect(first(of("pb-sb6"), metal("ag-999"), { done })?.test).toBe("sound");
});

test("an instrument that is not owned comes last and is marked", () => {
  const next = nextTests(of("wcu-60"), metal("ag-999"), { owned: ["sound"], done: ["worn"] });
  expect(next.at(-1)).toMatchObject({ test: "conductivity", elsewhere: true });
  expect(next.find(({ test }) => test === "sound")?.elsewhere).toBeUndefined();
});

test("two finenesses of one alloy are left to a laboratory", () => {
  expect(first(of("ag-900"), metal("ag-925-cu"))?.test).toBe("laboratory");
});

test("nothing to separate means no next test", () => {
  expect(nextTests([], metal("el-al"))).toEqual([]);
});

test("tungsten and gold are separated by conductivity 31 against 70 to 78 % IACS, and by 5460 against 3240 m/s", () => {
  // programmed-instruction tables 9.1; ASTM E494 Table X3.1
  expect(separationBy.conductivity(metal("el-au"), metal("el-w"))?.params).toMatchObject({
    one_low_iacs: 70,
    one_high_iacs: 78.4,
    other_low_iacs: 31.4,
    other_high_iacs: 31.9,
  });
  const sound = separationBy.sound(metal("el-au"), metal("el-w"))?.params;
  expect(sound?.one_speed).toMatchObject({ params: { speed_m_s: 3240 } });
  expect(sound?.other_speed).toMatchObject({ params: { speed_m_s: 5460 } });
  expect(separation(metal("el-au"), metal("el-w")).test).toBe("colour");
});

test("a result carries its next tests, and a verdict when a rule was agreed", () => {
  const found = stands(normally(10.3677, 0.007), "ag-925", { rule: guardBandOfU });
  expect(found.nextTests[0]!.separates.length).toBeGreaterThan(0);
  expect(found.decision!.verdict).toBe("pass");
  expect(stands(normally(10.3677, 0.007), "ag-925")).not.toHaveProperty("decision");
});
