import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartView } from "../../../server/checks/charts/chart-view.ts";
import { type ControlChart, withPoint } from "../../../server/checks/charts/control-chart.ts";
import { withEpoch } from "../../../server/checks/charts/epoch.ts";
import { brokenBy } from "../../../server/checks/charts/run-rules.ts";
import { lastGood, toLookAt } from "../../../server/checks/look-back.ts";

const by = "the morning watch";
const day = (n: number, hour = 8) => new Date(Date.UTC(2026, 2, n, hour)).toISOString();

const empty: ControlChart = { kind: "reference-density", of: "copper rod", epochs: [], points: [] };

/** Twelve mornings with mean 8.9600 and s 0.0020, then limits signed on the thirteenth. */
const base = [0, 1, -1, 1.5, -1.5, 0.5, -0.5, 1, -1, 0, 1, -1];
const scale = 0.002 / Math.sqrt(base.reduce((sum, z) => sum + z * z, 0) / (base.length - 1));
const twelve = base.reduce(
  (chart, z, place) =>
    withPoint(chart, { at: day(place + 1), value: 8.96 + z * scale, by, session: `morning ${place}` }),
  empty,
);
const limited = withEpoch(twelve, { from: day(13), by, why: "first limits", basis: twelve.points });

/** The chart after further mornings, given in units of s from the mean. */
const further = (...z: number[]) =>
  z.reduce(
    (chart, one, place) =>
      withPoint(chart, { at: day(14 + place), value: 8.96 + one * 0.002, by, session: `later ${place}` }),
    limited,
  );
const rules = (...z: number[]) => brokenBy(z).map(({ name }) => name);

describe("run rules", () => {
  // run rules of Shewhart charts of the kind ISO 7870-2 describes [from memory]
  test.each([
    ["beyond-2s", [2.1]],
    ["beyond-3s", [-3.1]],
    ["two-beyond-2s", [2.1, 2.3]],
    ["two-apart", [2.1, -2.2]],
    ["four-beyond-1s", [1.1, 1.2, 1.6, 1.1]],
    ["ten-on-one-side", [0.1, 0.2, 0.3, 0.1, 0.1, 0.4, 0.2, 0.1, 0.3, 0.1]],
  ])("%s is seen in %j", (name, z) => {
    expect(rules(...z)).toContain(name);
  });

  test.each([
    [[1.9]],
    [[2.1, 1.9]],
    [[1.1, 1.2, 0.9, 1.1]],
    [[0.1, 0.2, 0.3, 0.1, 0.1, 0.4, 0.2, 0.1, 0.3, -0.1]],
  ])("%j breaks no rule of its last point", (z) => {
    expect(rules(...z).filter((name) => name !== "beyond-2s")).toEqual([]);
  });

  test("two warnings in a row always stop the bench, on whichever sides they fall", () => {
    const beyond = fc.tuple(fc.double({ min: 2.0001, max: 2.9999, noNaN: true }), fc.boolean());
    fc.assert(
      fc.property(beyond, beyond, ([a, up], [b, alsoUp]) => {
        const broken = brokenBy([up ? a : -a, alsoUp ? b : -b]);
        expect(broken.some(({ calls }) => calls === "action")).toBe(true);
      }),
    );
  });

  test("a chart turned upside down breaks the same rules", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 1, maxLength: 14 }),
        (z) => {
          expect(rules(...z.map((one) => -one))).toEqual(rules(...z));
        },
      ),
    );
  });
});

describe("limits", () => {
  test("before seven points there are none, and the chart says how many are missing", () => {
    const young = { ...empty, points: twelve.points.slice(0, 4) };
    expect(chartView(young).standing).toEqual({
      state: "no-limits",
      message: { code: "bench-check.chart.no-limits", params: { count: 4 } },
      todo: { code: "bench-check.chart.more-points", params: { count: 3 } },
    });
    expect(() => withEpoch(young, { from: day(13), by, why: "first limits", basis: young.points })).toThrow(
      expect.objectContaining({ code: "bench-check.limits.too-few", params: { count: 4, least: 7 } }),
    );
  });

  test("limits from twelve points stand at the mean and two and three s, and are provisional", () => {
    const [band] = chartView(limited).limits;
    expect(band?.mean).toBeCloseTo(8.96, 10);
    expect(band?.warning).toEqual([expect.closeTo(8.956, 10), expect.closeTo(8.964, 10)]);
    expect(band?.action).toEqual([expect.closeTo(8.954, 10), expect.closeTo(8.966, 10)]);
    expect(band?.provisional).toBe(true);
    expect(band?.message.params).toMatchObject({ kind: "provisional", settled: 25, count: 12 });
  });

  test("nobody changes limits without name and reason", () => {
    const basis = twelve.points;
    expect(() => withEpoch(limited, { from: day(20), by: " ", why: "new water", basis })).toThrow(
      expect.objectContaining({ code: "bench-check.limits.unsigned", at: "by" }),
    );
    expect(() => withEpoch(limited, { from: day(20), by, why: "", basis })).toThrow(
      expect.objectContaining({ code: "bench-check.limits.unsigned", at: "why" }),
    );
  });

  test("limits never reach backwards", () => {
    const signed = { from: day(12), by, why: "new water", basis: twelve.points };
    expect(() => withEpoch(limited, signed)).toThrow(
      expect.objectContaining({ code: "bench-check.limits.backwards" }),
    );
  });

  test("ninety more points change no limit by themselves", () => {
    const later = further(...Array.from({ length: 90 }, (_, n) => 1.5 * Math.sin(n)));
    expect(chartView(later).limits).toEqual(chartView(limited).limits);
  });

  test("a new epoch judges only what comes after it, and the old one keeps its points and their verdicts", () => {
    const moved = further(-3.2);
    const signed = withEpoch(moved, { from: day(15), by, why: "new water source", basis: twelve.points });
    const next = withPoint(signed, { at: day(16), value: 8.96, by, session: "after the move" });
    const view = chartView(next);
    expect(view.points.at(-2)?.state).toBe("action");
    expect(view.points.at(-1)?.state).toBe("in-control");
    expect(view.limits.map(({ firstPoint }) => firstPoint)).toEqual([12, 13]);
  });

  test("a display that never moves does not make limits of no width", () => {
    const still = {
      ...empty,
      points: twelve.points.map((point) => ({ ...point, value: 20, resolution: 0.01 })),
    };
    const chart = withEpoch(still, {
      from: day(13),
      by,
      why: "first limits",
      basis: still.points,
    });
    expect(chart.epochs[0]?.s).toBeCloseTo(0.0041, 4);
  });

  test("a point that is no number is refused", () => {
    expect(() => withPoint(limited, { at: day(20), value: Number.NaN, by, session: "garbled" })).toThrow(
      expect.objectContaining({ code: "bench-check.chart.no-number" }),
    );
  });

  test("a point out of order is refused", () => {
    expect(() => withPoint(limited, { at: day(2), value: 8.96, by, session: "late" })).toThrow(
      expect.objectContaining({ code: "bench-check.chart.out-of-order" }),
    );
  });
});

describe("how the bench stands", () => {
  test("2.3 s off in the morning is a warning: a cause is asked and work goes on", () => {
    const { standing } = chartView(further(2.3));
    expect(standing.state).toBe("warning");
    expect(standing.todo.code).toBe("bench-check.chart.ask-cause");
  });

  test("a second one the next morning stops the bench", () => {
    const view = chartView(further(2.3, 2.4));
    expect(view.standing.state).toBe("action");
    expect(view.violations.map(({ rule }) => rule)).toContain("two-beyond-2s");
    expect(view.violations.find(({ rule }) => rule === "two-beyond-2s")?.message.params).toMatchObject({
      cause: { code: "bench-check.cause.bias" },
    });
  });

  test("a check repeated until it passes is plotted whole and stays a warning until a cause is noted", () => {
    const tries = (cause?: string) =>
      [-3.4, 3.2, 0.3].reduce(
        (chart, z, place) =>
          withPoint(chart, {
            at: day(14, 8 + place),
            value: 8.96 + z * 0.002,
            by,
            session: "one morning",
            ...(cause === undefined ? {} : { cause }),
          }),
        limited,
      );
    const view = chartView(tries());
    expect(view.points.slice(-3).map(({ state, attempt }) => [attempt, state])).toEqual([
      [1, "action"],
      [2, "action"],
      [3, "in-control"],
    ]);
    expect(view.points.at(-1)?.message).toEqual({
      code: "bench-check.chart.in-control",
      params: { attempt: 3 },
    });
    expect(view.standing.state).toBe("warning");
    expect(view.standing.message.code).toBe("bench-check.chart.unexplained");
    expect(chartView(tries("bubble on the hanger")).standing.state).toBe("in-control");
  });
});

describe("looking back", () => {
  const records = [2, 5, 6, 9].map((n) => ({ id: `record ${n}`, at: day(n, 12) }));
  const since = (...checks: [n: number, passed: boolean][]) =>
    toLookAt(lastGood(checks.map(([n, passed]) => ({ at: day(n), passed }))), records).map(({ id }) => id);

  test("what was measured since the last good check is flagged, also after the failure", () => {
    expect(since([1, true], [4, true], [7, false])).toEqual(["record 5", "record 6", "record 9"]);
  });

  test("a second failure takes nothing off the list: it reaches back to the last good check", () => {
    expect(since([4, true], [6, false], [7, false])).toEqual(["record 5", "record 6", "record 9"]);
  });

  test("without any good check on record everything is flagged", () => {
    expect(since([7, false])).toHaveLength(4);
  });
});
