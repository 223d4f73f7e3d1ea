import { expect, test } from "vitest";
import { dayRange, localTime, momentsOf } from "../../calibration/local-time.ts";

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

// Berlin as above. Sydney: summer time (+11:00) ends on the first Sunday of April at 03:00, which becomes 02:00: Standard
// Time Act 1987 (NSW). Beirut put its clock forward at midnight until 2022, so that such a day began at one: IANA tz data.
test.each([
  ["2026-03-29", "Europe/Berlin", "2026-03-28T23:00:00.000Z", "2026-03-29T21:59:59.999Z"],
  ["2026-10-25", "Europe/Berlin", "2026-10-24T22:00:00.000Z", "2026-10-25T22:59:59.999Z"],
  ["2026-04-05", "Australia/Sydney", "2026-04-04T13:00:00.000Z", "2026-04-05T13:59:59.999Z"],
  ["2021-03-28", "Asia/Beirut", "2021-03-27T22:00:00.000Z", "2021-03-28T20:59:59.999Z"],
  ["2026-06-01", "UTC", "2026-06-01T00:00:00.000Z", "2026-06-01T23:59:59.999Z"],
])(
  "%s in %s begins and ends by its own clock, also where it has 23 or 25 hours",
  (day, zone, from, until) => {
    expect(dayRange(day, zone)).toEqual({ from, until });
  },
);

test.each(["2026-02-30", "2026-13-01", "29.11.2026", ""])("%j is no day of the calendar", (day) => {
  expect(dayRange(day, "Europe/Berlin")).toBeUndefined();
});
