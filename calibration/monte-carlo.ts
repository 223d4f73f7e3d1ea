import { adaptive, type Patience } from "./adaptive.ts";
import { type Batch, batches } from "./batch.ts";
import type { Expression, Inputs } from "./input.ts";
import { propagate } from "./propagation.ts";
import type { Random32 } from "./random.ts";
import { sampler } from "./sampling.ts";

/** A distribution as its trials tell it. */
export interface Distribution {
  mean: number;
  u: number;
  interval: readonly [number, number];
  trials: number;
  /** false when the numerical tolerance was not reached before the trials ran out */
  settled: boolean;
}

/** The value below which the share p of ascending trials lies, interpolated between neighbours. */
function quantileOf(sorted: Float64Array, p: number): number {
  const x = Math.max(0, Math.min(sorted.length - 1, p * sorted.length - 0.5));
  const i = Math.min(sorted.length - 2, Math.floor(x));
  return sorted[i]! + (x - i) * (sorted[i + 1]! - sorted[i]!);
}

/** Mean and standard deviation of trials, about one of them so that no digits are lost. */
export function momentsOf(trials: Float64Array): readonly [mean: number, s: number] {
  const about = trials[trials.length >> 1]!;
  let first = 0;
  let second = 0;
  for (let k = 0; k < trials.length; k++) {
    const d = trials[k]! - about;
    first += d;
    second += d * d;
  }
  const n = trials.length;
  return [about + first / n, Math.sqrt(Math.max(0, second - (first * first) / n) / (n - 1))];
}

/**
 * Propagation of distributions, JCGM 101:2008, for any model, with the adaptive procedure of 7.9. Blocks are
 * quasi-random with a random shift each, independent of one another, so the rule holds unchanged and is met sooner.
 * The interval has equal tails. (Densities use trials-distribution.ts, which needs fewer trials still.)
 */
export function monteCarlo(
  model: Expression,
  inputs: Inputs,
  random: Random32,
  options: { confidence: number; trialsPerBlock?: number } & Partial<Omit<Patience, "watched">>,
): Distribution {
  const { confidence, trialsPerBlock = 16384, digits = 2, part = 1, blocks = [4, 64] } = options;
  const size = 2048;
  const contributions = propagate(model, inputs).rows.map((row) => row.contribution);
  const draws = sampler(inputs, contributions, size, random);
  const arithmetic = batches(size);
  const results = new Float64Array(Math.max(size, trialsPerBlock));
  const run = adaptive(
    () => {
      draws.begin();
      for (let from = 0; from < results.length; from += size) {
        const columns = draws.draw(from);
        arithmetic.start();
        const out: Batch = model<Batch>(arithmetic, (input) => columns[input.index]!);
        if (typeof out === "number") results.fill(out, from, from + size);
        else results.set(out, from);
      }
      results.sort();
      const ends = [(1 - confidence) / 2, (1 + confidence) / 2].map((p) => quantileOf(results, p));
      return [...momentsOf(results), ends[0]!, ends[1]!];
    },
    { digits, part, blocks, watched: "all" },
  );
  const [mean, u, low, high] = run.averages;
  return { mean, u, interval: [low, high], trials: run.blocks * results.length, settled: run.settled };
}
