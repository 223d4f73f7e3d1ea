import { expect, test } from "vitest";
import type { Bench } from "../../../server/station/bench.ts";
import { checksNow } from "../../../server/web/bench/checks-now.ts";

const checks: Bench["checks"] = [
  { code: "check.creep-possible", severity: "warn", params: { possible_g: 0.0009 }, remedies: [] },
  { code: "check.zero-moved", severity: "warn", params: {}, remedies: [] },
];
const reading = {
  state: "reading",
  text: "28.1434",
  unit: "g",
  stability: "stable",
  at: "2026-03-02T09:00:00.000Z",
} as const;
const codes = (live: Bench["live"]) => checksNow({ checks, live }).map(({ code }) => code);

test("what a load may still creep is shown once it was lifted, not while it is watched", () => {
  expect(codes({ ...reading, watchesForSeconds: 3 })).toEqual(["check.zero-moved"]);
  expect(codes(reading)).toEqual(["check.creep-possible", "check.zero-moved"]);
  expect(codes(undefined)).toEqual(["check.creep-possible", "check.zero-moved"]);
});
