import { expect, test } from "vitest";
import { localTime, momentsOf } from "../../calibration/local-time.ts";

// Summer time in the Union begins and ends at 01:00 UTC on the last Sundays of March and October: Directive 2000/84/EC
test.each([
  ["2026-03-29", "02:30", []],
  ["2026-10-25", "02:30", ["2026-10-25T00:30:00.000Z", "2026-10-25T01:30:00.000Z"]],
  ["2026-03-29", "03:00", ["2026-03-29T01:00:00.000Z"]],
  ["2026-03-02", "00:00", ["2026-03-01T23:00:00.000Z"]],
])("%s %s in Berlin is %j", (day, time, moments) => {
  expect(momentsOf(day, time, "Europe/Berlin")).toEqual(moments);
});

test("the same moment is another day in Sydney", () => {
  const shown = localTime("2026-11-28T23:30:00.000Z", "Australia/Sydney");
  expect(shown).toEqual({ day: "2026-11-29", time: "10:30:00", offset: "+11:00" });
});
