import { expect, test } from "vitest";
import { checksOf } from "../../../../server/weighing/checks/index.ts";
import { soundOunce } from "./situations.ts";

const at = "2026-03-04T09:00:00.000Z";
const moved = (grams: number) => ({
  ...soundOunce,
  live: [{ at, text: "28.1471", unit: "g" as const, movedOn: { grams, role: "wet" as const } }],
});
const seen = (grams: number) => checksOf(moved(grams)).find(({ code }) => code === "check.moved-on");

test("a display that moved on after the take stops the record where it matters, and offers to take it again", () => {
  const stop = seen(0.0036);
  expect(stop).toMatchObject({ severity: "stop", params: { moved_g: 0.0036 } });
  expect(stop?.remedies[0]).toEqual({
    code: "check.remedy.take-again",
    offer: { do: "repeat", role: "wet" },
  });
  // Less than three times the scatter of one reading.
  expect(seen(0.0002)?.severity).toBe("warn");
  expect(checksOf(soundOunce).map(({ code }) => code)).not.toContain("check.moved-on");
});

test("a reading that was taken while it crept is told, with the same remedy", () => {
  const [first, ...others] = soundOunce.wet;
  const crept = checksOf({ ...soundOunce, wet: [{ ...first!, crept: true }, ...others] });
  expect(crept.find(({ code }) => code === "check.creeping")).toMatchObject({
    severity: "warn",
    remedies: expect.arrayContaining([
      { code: "check.remedy.take-again", offer: { do: "repeat", role: "wet" } },
    ]),
  });
});

test("a creep that nothing excluded is told where it would move the density by more than its U", () => {
  const [first] = soundOunce.wet;
  const told = (possibleGrams: number, expandedGPerCm3: number) =>
    checksOf({
      ...soundOunce,
      wet: [{ ...first!, possibleGrams }],
      density: { valueGPerCm3: 10.49, expandedGPerCm3 },
    }).find(({ code }) => code === "check.creep-possible");
  // 0.7 mg of the 2.96 g displaced is 0.0025 g/cm³
  expect(told(0.0007, 0.0024)).toMatchObject({ severity: "warn", params: { possible_g: 0.0007 } });
  expect(told(0.0007, 0.0026)).toBeUndefined();
  expect(told(0, 0.0001)).toBeUndefined();
});
