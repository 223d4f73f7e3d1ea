import { type Batch, batches } from "./batch.ts";
import type { Expression, Inputs } from "./input.ts";
import { propagate } from "./propagation.ts";
import type { Random32 } from "./random.ts";
import { repeats } from "./repeats.ts";
import { sampler } from "./sampling.ts";

/** A distribution as its sorted trials. */
export interface Distribution {
  mean: number;
  u: number;
  interval: readonly [number, number];
  trials: number;
  /** ascending; trials without a finite result (nothing displaced) stand last as Infinity */
  sorted: Float64Array;
  /** false when the numerical tolerance was not reached before the trials ran out */
  settled: boolean;
}

/** The numerical tolerance of JCGM 101:2008, 7.9.2: half a unit of the last of `digits` significant digits of u. */
export function numericalTolerance(u: number, digits: number): number {
  if (!(u > 0)) return 0;
  return 0.5 * 10 ** (Math.floor(Math.log10(Number(u.toPrecision(digits)))) - digits + 1);
}

/** The value below which the share p of the sorted trials lies, interpolated between neighbours. */
export function quantileOf(sorted: Float64Array, p: number): number {
  const x = p * sorted.length - 0.5;
  const i = Math.max(0, Math.min(sorted.length - 1, Math.floor(x)));
  const low = sorted[i]!;
  const high = sorted[Math.min(sorted.length - 1, i + 1)]!;
  const f = Math.max(0, Math.min(1, x - i));
  return f === 0 || low === high ? low : low + f * (high - low);
}

/** Share of the sorted trials below x. */
export function shareBelow(sorted: Float64Array, x: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const mid = (low + high) >>> 1;
    if (sorted[mid]! < x) low = mid + 1;
    else high = mid;
  }
  return low / sorted.length;
}

export interface MonteCarloOptions {
  confidence: number;
  /** significant digits of u that must stand, JCGM 101 n_dig */
  digits?: 1 | 2;
  /** run to this part of the tolerance; JCGM 101:2008, 8.2 asks for a fifth when GUM is being validated */
  part?: number;
  /** trials in one block; a power of two */
  block?: number;
  /** blocks at least and at most */
  blocks?: readonly [number, number];
}

/**
 * Propagation of distributions, JCGM 101:2008, with the adaptive procedure of 7.9: blocks of trials until twice the
 * standard deviation of the block averages of value, u and both interval ends is within the tolerance. Blocks are
 * quasi-random with a random shift each, independent of one another, so the rule holds unchanged and is met sooner.
 * The interval is probabilistically symmetric (equal tails).
 */
export function monteCarlo(
  model: Expression,
  inputs: Inputs,
  random: Random32,
  { confidence, digits = 2, part = 1, block = 4096, blocks: [least, most] = [4, 32] }: MonteCarloOptions,
): Distribution {
  const chunk = Math.min(block, 2048);
  const { rows } = propagate(model, inputs);
  const draws = sampler(
    inputs,
    rows.map((row) => row.contribution),
    chunk,
    random,
  );
  const arithmetic = batches(chunk);
  const tails = [(1 - confidence) / 2, (1 + confidence) / 2] as const;
  const done: Float64Array[] = [];
  const figures: [number[], number[], number[], number[]] = [[], [], [], []];
  let settled = false;
  while (done.length < most && !settled) {
    const results = new Float64Array(block);
    draws.begin();
    for (let from = 0; from < block; from += chunk) {
      const columns = draws.draw(from);
      arithmetic.start();
      const out: Batch = model<Batch>(arithmetic, (input) => columns[input.index]!);
      if (typeof out === "number") results.fill(out, from, from + chunk);
      else results.set(out, from);
    }
    results.sort();
    done.push(results);
    const { mean, s } = repeatsOf(results);
    [mean, s, quantileOf(results, tails[0]), quantileOf(results, tails[1])].forEach((figure, i) => {
      figures[i]!.push(figure);
    });
    if (done.length < least) continue;
    const within = numericalTolerance(repeats(figures[1]).mean, digits) * part;
    settled = figures.every((f) => (2 * repeats(f).s) / Math.sqrt(f.length) <= within);
  }
  const sorted = new Float64Array(done.length * block);
  done.forEach((results, i) => {
    sorted.set(results, i * block);
  });
  sorted.sort();
  const { mean, s } = repeatsOf(sorted);
  return {
    mean,
    u: s,
    interval: [quantileOf(sorted, tails[0]), quantileOf(sorted, tails[1])],
    trials: sorted.length,
    sorted,
    settled,
  };
}

function repeatsOf(sorted: Float64Array): { mean: number; s: number } {
  const middle = sorted[sorted.length >> 1]!;
  let first = 0;
  for (let i = 0; i < sorted.length; i++) first += sorted[i]! - middle;
  const shift = first / sorted.length;
  let squares = 0;
  for (let i = 0; i < sorted.length; i++) {
    const d = sorted[i]! - middle - shift;
    squares += d * d;
  }
  return { mean: middle + shift, s: Math.sqrt(squares / (sorted.length - 1)) };
}
