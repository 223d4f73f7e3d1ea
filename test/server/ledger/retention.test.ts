import fc from "fast-check";
import { expect, test } from "vitest";
import { expiring, keptUntil, retentionFrom, yearsKept } from "../../../server/ledger/retention.ts";
import { testLedger } from "./bench-ledger.ts";

const day = (n: number) => new Date(Date.UTC(2020, 0, 1) + n * 86_400_000).toISOString();

test("a longer setting lengthens the time of existing records, a shorter one holds for new ones only", () => {
  const settings = [
    { at: "2020-01-01T00:00:00.000Z", years: 5 },
    { at: "2022-01-01T00:00:00.000Z", years: 10 },
    { at: "2024-01-01T00:00:00.000Z", years: 2 },
  ];
  expect(keptUntil("2021-05-04T10:00:00.000Z", settings)).toBe("2031-05-04T10:00:00.000Z");
  expect(keptUntil("2025-05-04T10:00:00.000Z", settings)).toBe("2027-05-04T10:00:00.000Z");
  expect(keptUntil("2019-05-04T10:00:00.000Z", settings)).toBeNull();
  expect(keptUntil("2024-02-29T10:00:00.000Z", settings)).toBe("2026-03-01T10:00:00.000Z");
});

test("whatever settings follow, the time of a record that exists is never shortened", () => {
  const setting = fc.record({
    day: fc.integer({ min: 0, max: 4000 }),
    years: fc.integer({ min: 1, max: 30 }),
  });
  fc.assert(
    fc.property(
      fc.array(setting, { minLength: 1, maxLength: 8 }),
      fc.integer({ min: 0, max: 4000 }),
      (list, made) => {
        const settings = list
          .sort((a, b) => a.day - b.day)
          .map((each) => ({ at: day(each.day), years: each.years }));
        let kept = yearsKept(
          day(made),
          settings.filter(({ at }) => at <= day(made)),
        );
        for (const next of settings.filter(({ at }) => at > day(made))) {
          const after = yearsKept(day(made), settings.slice(0, settings.indexOf(next) + 1));
          if (kept === null) expect(after).toBeNull();
          else expect(after ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(kept);
          kept = after;
        }
      },
    ),
  );
});

test("records whose time ends are shown, soonest first, and stay in the ledger", async () => {
  const ledger = await testLedger();
  await ledger.append("retention", "settings", { years: 1, reason: "local law" });
  const settings = retentionFrom(await ledger.entries({ kind: "retention" }));
  const records = ["2026-05-01", "2026-04-01", "2026-12-01"].map((at) => ({ at: `${at}T00:00:00.000Z` }));
  const shown = expiring(records, settings, new Date("2027-06-01T00:00:00.000Z"));
  expect(shown.map(({ until }) => until.slice(0, 10))).toEqual(["2027-04-01", "2027-05-01"]);
});
