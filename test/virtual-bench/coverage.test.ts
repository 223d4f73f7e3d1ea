import { beforeAll, describe, expect, test } from "vitest";
import { longRun, whole } from "../setup/long-run.ts";
import { binomialAtMost } from "./binomial.ts";
import type { Row } from "./class-of.ts";
import { rows } from "./classes.ts";
import { figuresOf, type Outcome, outcomesOf } from "./outcome.ts";
import { recorded, recordedRows, tableInReadme } from "./record.ts";
import { aims, coverageTable, reaches } from "./table.ts";
import { startUnderhook } from "./underhook.ts";

/**
 * A night weighs every class whole and judges it without any allowance for chance: draws are fixed. A day weighs a
 * fiftieth, for the sake of its minutes. A class of 80 then fails only when what it shows would come by chance once in a
 * thousand at the bound it is held to: with 67 or fewer covered at a bound of 94.5 %, which finds a coverage of 78 % in 92 of
 * 100 cases; a class of 20 with 14 or fewer told or covered at a bound of 95 %, which finds a share of 55 % in 94 of 100. What
 * no single class can show by day, all classes together do: they are held to the aims without allowance.
 */
const rare = 1e-3;
const sizes = { truly: longRun(4000, 80), falsely: longRun(1000, 20) };

const found = new Map<string, Outcome[]>();

beforeAll(async () => {
  const underhook = startUnderhook();
  for (const row of rows) found.set(row.name, await outcomesOf(underhook, row, sizes[row.group]));
  underhook.close();
}, 6 * 3_600_000);

/** The bounds a class is held to: its aim, or what was reached where that falls short of it. */
function bounds(row: Row) {
  const before = recorded()[row.name];
  const [low, high] = aims.covered;
  if (before === undefined || reaches({ row, figures: before }))
    return { covered: [low, high], safe: aims.safe, stopped: aims.falseStops } as const;
  return {
    covered: [Math.min(low, before.covered), Math.max(high, before.covered)],
    safe: Math.min(aims.safe, before.safe),
    stopped: Math.max(aims.falseStops, before.stopped),
  } as const;
}

/** True when a share below (or above) the bound is more than chance in this many. */
function below(share: number, bound: number, n: number): boolean {
  if (share >= bound) return false;
  return whole || binomialAtMost(Math.round(share * n), n, bound) < rare;
}
const above = (share: number, bound: number, n: number) => below(1 - share, 1 - bound, n);

const of = (group: Row["group"]) => rows.filter((row) => row.group === group);

describe("where everything stated is true", () => {
  test.each(of("truly").map((row) => [row.name, row] as const))(
    "%s: the interval covers as stated",
    (name, row) => {
      const { covered, stopped, count } = figuresOf(found.get(name)!);
      const spoken = Math.round(count * (1 - stopped));
      const held = bounds(row);
      expect(below(covered, held.covered[0], spoken), `covered ${covered} of ${spoken}`).toBe(false);
      expect(above(covered, held.covered[1], spoken), `covered ${covered} of ${spoken}`).toBe(false);
      expect(above(stopped, held.stopped, count), `stopped ${stopped} of ${count}`).toBe(false);
    },
  );

  test("all classes together cover at least as stated, by day too", () => {
    const { covered } = figuresOf(of("truly").flatMap(({ name }) => found.get(name)!));
    expect(covered).toBeGreaterThanOrEqual(aims.covered[0]);
  });

  test("genuine pieces are called excluded within the stated risk, fakes consistent within it", () => {
    const { genuineExcluded, fakesConsistent } = figuresOf(
      of("truly").flatMap(({ name }) => found.get(name)!),
    );
    expect(genuineExcluded).toBeLessThan(0.0455);
    expect(fakesConsistent).toBeLessThan(0.0455);
  });

  test("a fine balance excludes nearly every fake, so that the low risk is not bought with silence", () => {
    for (const method of ["hung", "displaced", "flask"])
      expect(figuresOf(found.get(`${method}, 0.1 mg`)!).fakesExcluded).toBeGreaterThan(0.9);
  });
});

describe("where reality contradicts what is stated", () => {
  test.each(of("falsely").map((row) => [row.name, row] as const))(
    "%s: covered, warned or stopped",
    (name, row) => {
      const { safe, count } = figuresOf(found.get(name)!);
      expect(below(safe, bounds(row).safe, count), `${safe} of ${count}`).toBe(false);
    },
  );
});

test("at least 45 classes are weighed, and the table in the README is that of the last whole run", () => {
  expect(rows.length).toBeGreaterThanOrEqual(45);
  expect(new Set(rows.map(({ name }) => name)).size).toBe(rows.length);
  expect(Object.keys(recorded())).toEqual(rows.map(({ name }) => name));
  expect(tableInReadme()).toBe(coverageTable(recordedRows()).trim());
});
