import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { expect, test } from "vitest";
import { normalQuantile } from "../../../../calibration/normal.ts";
import { seededRandom } from "../../../../calibration/random.ts";
import { meltSplit } from "../../../../server/metals/fineness/melt-split.ts";

test("five melts by hand: mean, standard deviation and where the sixth lies", () => {
  // by hand: deviations −8, −4, 0, 4, 8 hundredths; squares add to 0.0160; s = √(0.0160/4) = 0.063246
  const { mean, s, next, melts } = meltSplit([0.3, 0.34, 0.38, 0.42, 0.46], 0.95);
  expect([melts, mean]).toEqual([5, expect.closeTo(0.38, 12)]);
  expect(s).toBeCloseTo(0.063246, 6);
  // JCGM 100:2008 table G.2 prints t = 2.78 for 95 % and 4 degrees of freedom: 2.78 × 0.063246 × √(6/5) = 0.1926
  expect(next[1] - mean).toBeCloseTo(0.1926, 3);
  // scipy 1.17.1: mean ± stats.t.ppf(0.975, 4)·s·√(1 + 1/5)
  expect(next[0]).toBeCloseTo(0.18764224, 7);
  expect(next[1]).toBeCloseTo(0.57235776, 7);
});

test("nine melts agree with another library's quantile of t", () => {
  const shares = [0.41, 0.38, 0.52, 0.45, 0.49, 0.36, 0.44, 0.47, 0.4];
  const { mean, s, next } = meltSplit(shares, 0.9545);
  const half = tQuantile((1 + 0.9545) / 2, 8) * s * Math.sqrt(10 / 9);
  expect(next[0]).toBeCloseTo(mean - half, 10);
  expect(next[1]).toBeCloseTo(mean + half, 10);
});

test("the interval holds the next melt as often as it says", () => {
  const random = seededRandom(20_260_302);
  const drawn = () => 0.5 + 0.04 * normalQuantile((random() + 0.5) / 2 ** 32);
  const rounds = 4000;
  let held = 0;
  for (let round = 0; round < rounds; round++) {
    const { next } = meltSplit([drawn(), drawn(), drawn(), drawn(), drawn(), drawn()], 0.95);
    const one = drawn();
    if (one >= next[0] && one <= next[1]) held++;
  }
  // four standard deviations of a share of 4000 at 95 %: 4·√(0.95·0.05/4000)
  expect(Math.abs(held / rounds - 0.95)).toBeLessThan(0.0138);
});

test("a share is never foretold below nought or above one", () => {
  const { next } = meltSplit([0.02, 0.1, 0.05, 0.01, 0.2], 0.95);
  expect(next[0]).toBe(0);
});

test("four melts are too few, and the refusal says how many it takes", () => {
  expect(() => meltSplit([0.4, 0.5, 0.4, 0.5], 0.95)).toThrow(RangeError);
  expect(() => meltSplit([0.4, 0.5, 0.4, 0.5, 0.4], 95)).toThrow(RangeError);
});
