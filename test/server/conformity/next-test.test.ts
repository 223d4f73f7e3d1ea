import { expect, test } from "vitest";
import { guardBandOfU } from "../../../server/conformity/decision-rule.ts";
import { findingFor } from "../../../server/conformity/finding.ts";
import { nextTest } from "../../../server/conformity/next-test.ts";
import { separation } from "../../../server/conformity/separation.ts";
import { metal } from "../../../server/metals/library.ts";
import { normally } from "./normally.ts";

const of = (...ids: string[]) => ids.map((id) => metal(id));

test("steel beside brass calls for a magnet", () => {
  const next = nextTest(of("steel-c"), metal("brass-c260"))!;
  expect(next.test).toBe("magnet");
});

test("lead mixtures beside silver call for conductivity, which separates them all", () => {
  const next = nextTest(of("pb-sn", "pb-sb6"), metal("ag-925"))!;
  expect(next.test).toBe("conductivity");
  expect(next.says).toMatch(/separates all/);
});

test("a test that was done is not proposed again", () => {
  const next = nextTest(of("pb-sb6"), metal("ag-999"), new Set(["conductivity", "magnet"]))!;
  expect(next.test).toBe("sound");
});

test("two finenesses of one alloy are left to a laboratory", () => {
  expect(nextTest(of("ag-900"), metal("ag-925-cu"))!.test).toBe("laboratory");
});

test("nothing to separate means no next test", () => {
  expect(nextTest([], metal("el-al"))).toBeNull();
});

test("tungsten and gold are separated by conductivity 31 against 70 to 78 % IACS, and by 5460 against 3240 m/s", () => {
  // programmed-instruction tables 9.1; ASTM E494 Table X3.1
  expect(separation(metal("el-au"), metal("el-w")).says).toMatch(
    /70 to 78\.4 % IACS, Tungsten 31\.4 to 31\.9/,
  );
});

test("a finding carries its next test, and a verdict when a rule was agreed", () => {
  const finding = findingFor(normally(10.3677, 0.007), "ag-925", 0.9545, { rule: guardBandOfU });
  expect(finding.nextTest!.separates.length).toBeGreaterThan(0);
  expect(finding.conformity!.verdict).toBe("pass");
  expect(findingFor(normally(10.3677, 0.007), "ag-925", 0.9545)).not.toHaveProperty("conformity");
});
