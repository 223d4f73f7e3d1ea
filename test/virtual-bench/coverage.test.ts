import { mkdirSync, writeFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { longRun, whole } from "../setup/long-run.ts";
import { normalWithin } from "./chance.ts";
import {
  type Cell,
  classes,
  everything,
  findings,
  methods,
  perCell,
  type Repeated,
  stated,
  those,
} from "./classes.ts";
import { coverage, type Measured, type MeasurementClass, measured } from "./coverage.ts";
import { page } from "./table.ts";

/** The band the observed coverage of every class must fall into. */
const band = { from: 0.945, to: 0.97 };

/** Risk of a wrong finding that the decision rule states. */
const risk = 1 - stated;

/** Three standard deviations of a share counted over n. */
const chance = (share: number, n: number) => 3 * Math.sqrt((share * (1 - share)) / n);

/** A tenth of the weighings cannot tell a share as closely as the band does: by day chance comes on top. */
const byDay = (share: number, n: number) => (whole ? 0 : chance(share, n));

let cells: Cell[];
let repeated: Repeated[];

beforeAll(async () => {
  ({ cells, repeated } = await everything());
}, 1_500_000); // three quarters of a minute on a core of its own, far longer on a busy machine

/**
 * The share of the stated variance that does not truly act. Every repeat stands on its own zero and its own roundings, so
 * they average out with the repeats, while the budget keeps them whole, since a display that repeats itself would show
 * the same. What evaporates between two zeros averages out in the same way. From four repeats on their own scatter
 * counts, which holds the roundings once more.
 */
function idleShare({ answer }: Measured, repeats: number): number {
  const share = answer.budget
    .filter(({ input }) => /resolution|zero drift/.test(input))
    .reduce((sum, row) => sum + row.share, 0);
  return share * (repeats < 4 ? 1 - 1 / repeats : 1);
}

describe("coverage of the stated interval by the virtual bench", () => {
  test.each(classes)(
    "the stated interval covers the truth in 94.5 to 97 of a hundred weighings: %s",
    (_, keep) => {
      const { covered, count, refused } = coverage(those(cells, keep));
      expect(count).toBeGreaterThan(longRun(3000));
      expect(refused).toBe(0);
      expect(covered).toBeGreaterThanOrEqual(band.from - byDay(band.from, count));
      expect(covered).toBeLessThanOrEqual(band.to + byDay(band.to, count));
    },
  );

  test("no single cell of method and scale departs from the stated coverage by more than chance", () => {
    for (const { all, method, scale } of cells) {
      const { covered } = coverage(all);
      expect(Math.abs(covered - stated), `${method}, ${scale}: ${covered}`).toBeLessThan(
        chance(stated, perCell),
      );
    }
  });

  test("what is missed is missed on both sides alike", () => {
    for (const { all, method, scale } of cells) {
      const { below, above } = coverage(all);
      expect(Math.max(below, above), `${method}, ${scale}`).toBeLessThan(
        risk / 2 + chance(risk / 2, perCell),
      );
    }
  });

  test("repeats over-cover by as much as the roundings they average out, and no more", () => {
    for (const { of, all } of repeated) {
      const expected =
        all.reduce((sum, one) => sum + normalWithin(2 / Math.sqrt(1 - idleShare(one, of.repeats))), 0) /
        all.length;
      const { covered } = coverage(all);
      const name = `${of.method}, ${of.scale}, ${of.repeats} repeats: expected ${expected.toFixed(4)}, found ${covered.toFixed(4)}`;
      expect(covered, name).toBeGreaterThan(stated - chance(stated, of.count));
      expect(covered, name).toBeGreaterThan(expected - chance(expected, of.count));
      // the normal law behind `expected` has longer tails than the sums of rectangles here: up to 1.5 % more is covered
      expect(covered, name).toBeLessThan(Math.min(1.0001, expected + 0.015 + chance(expected, of.count)));
    }
  });
});

describe("a virtual bench that is worse than it states is found out", () => {
  const of: MeasurementClass = { method: "hung", scale: "1 mg", repeats: 1, count: 300 };

  test("readings that scatter three times as much as stated leave the interval short", {
    timeout: 300_000,
  }, async () => {
    const { covered } = coverage(await measured({ ...of, truly: { wetScatterGrams: 0.0036 } }, 301));
    expect(covered).toBeLessThan(0.9);
  });

  test("bubbles beyond the allowance push the truth out on one side only", { timeout: 300_000 }, async () => {
    const { above, below } = coverage(await measured({ ...of, truly: { bubblesMg: 10 } }, 302));
    expect(above).toBeGreaterThan(0.3);
    expect(below).toBeLessThan(risk / 2 + chance(risk / 2, of.count));
  });
});

describe("findings of the virtual counter", () => {
  test("genuine pieces are called “disagrees” within the stated risk, in every class", () => {
    for (const { all, method, scale } of cells) {
      const { genuineDisagrees, genuine } = findings(all);
      expect(genuineDisagrees, `${method}, ${scale}`).toBeLessThan(risk + chance(risk, genuine));
    }
    const { genuineDisagrees, genuine } = findings(those(cells, () => true));
    expect(genuineDisagrees).toBeLessThan(risk + byDay(risk, genuine));
  });

  test("fakes are called “agrees” within the stated risk, in every class", () => {
    for (const { all, method, scale } of cells) {
      const { fakesAgrees, fakes } = findings(all);
      expect(fakesAgrees, `${method}, ${scale}`).toBeLessThan(risk + chance(risk, fakes));
    }
    const { fakesAgrees, fakes } = findings(those(cells, () => true));
    expect(fakesAgrees).toBeLessThan(risk + byDay(risk, fakes));
  });

  test("a fine balance calls nearly every fake “disagrees”, so that the low risk is not bought with silence", () => {
    for (const method of methods)
      expect(
        findings(those(cells, (cell) => cell.method === method && cell.scale === "0.1 mg")).fakesDisagrees,
      ).toBeGreaterThan(0.95);
  });
});

test("more than 20,000 weighings are made by night, and what was found is written down", () => {
  const found = page(cells, repeated);
  const output = new URL("../output/", import.meta.url);
  mkdirSync(output, { recursive: true });
  writeFileSync(new URL("coverage.md", output), found);
  expect(cells.reduce((sum, { all }) => sum + all.length, 0)).toBeGreaterThanOrEqual(longRun(20_000));
});
