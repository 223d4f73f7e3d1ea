import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { expect, test } from "vitest";
import { normalQuantile } from "../../calibration/normal.ts";
import { prediction } from "../../calibration/prediction-interval.ts";
import { seededRandom } from "../../calibration/random.ts";

test("five values by hand: mean, standard deviation and where the sixth lies", () => {
  // by hand: deviations −8, −4, 0, 4, 8 hundredths; squares add to 0.0160; s = √(0.0160/4) = 0.063246
  const { mean, s, half } = prediction([0.3, 0.34, 0.38, 0.42, 0.46], 0.95);
  expect(mean).toBeCloseTo(0.38, 12);
  expect(s).toBeCloseTo(0.063246, 6);
  // JCGM 100:2008 table G.2 prints t = 2.78 for 95 % and 4 degrees of freedom: 2.78 × 0.063246 × √(6/5) = 0.1926
  expect(half).toBeCloseTo(0.1926, 3);
  // scipy 1.17.1: mean ± stats.t.ppf(0.975, 4)·s·√(1 + 1/5)
  expect(mean - half).toBeCloseTo(0.18764224, 7);
  expect(mean + half).toBeCloseTo(0.57235776, 7);
});

test("nine values agree with another library's quantile of t", () => {
  const shares = [0.41, 0.38, 0.52, 0.45, 0.49, 0.36, 0.44, 0.47, 0.4];
  const { s, half } = prediction(shares, 0.9545);
  const expected = tQuantile((1 + 0.9545) / 2, 8) * s * Math.sqrt(10 / 9);
  expect(half).toBeCloseTo(expected, 10);
});

test("the interval holds the next value as often as it says", () => {
  const random = seededRandom(20_260_302);
  const drawn = () => 0.5 + 0.04 * normalQuantile((random() + 0.5) / 2 ** 32);
  const rounds = 4000;
  let held = 0;
  for (let round = 0; round < rounds; round++) {
    const { mean, half } = prediction([drawn(), drawn(), drawn(), drawn(), drawn(), drawn()], 0.95);
    if (Math.abs(drawn() - mean) <= half) held++;
  }
  // four standard deviations of a share of 4000 at 95 %: 4·√(0.95·0.05/4000)
  expect(Math.abs(held / rounds - 0.95)).toBeLessThan(0.0138);
});

test("one value has no scatter, and a confidence is a share", () => {
  expect(() => prediction([0.4], 0.95)).toThrow(RangeError);
  expect(() => prediction([0.4, 0.5, 0.4, 0.5, 0.4], 95)).toThrow(RangeError);
});
