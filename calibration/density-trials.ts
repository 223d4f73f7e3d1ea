import { adaptive, numericalTolerance } from "./adaptive.ts";
import { sum } from "./arithmetic.ts";
import { type Batch, batches } from "./batch.ts";
import { convolution } from "./convolution.ts";
import { type DensityParts, type Weighed, weighed } from "./density.ts";
import { type ImplicitDensity, implicitDensity } from "./implicit-density.ts";
import type { Input, Inputs } from "./input.ts";
import { momentsOf } from "./monte-carlo.ts";
import { type Cumulative, quantile } from "./quantile.ts";
import type { Quantity } from "./quantity.ts";
import type { Random32 } from "./random.ts";
import { sampler } from "./sampling.ts";
import { type DensityTrials, trialsAt } from "./trials-distribution.ts";

/** A Monte Carlo evaluation of one density. Densities in kg/m³. */
export interface DensityDistribution {
  mean: number;
  u: number;
  interval: readonly [number, number];
  count: number;
  settled: boolean;
  at: Cumulative;
  /** the same from the first trials alone: good enough to say where to look */
  roughly: Cumulative;
}

/** An input that enters the displaced mass alone, with this factor in g per unit of the input. */
export interface OpenContribution {
  input: Input;
  factor: number;
}

/**
 * Which contributions are left open: the rectangular ones, and the largest other one if it shows beside them. The rest
 * is drawn in the trials like any input.
 */
function leftOpen(all: readonly OpenContribution[]): OpenContribution[] {
  const size = ({ input, factor }: OpenContribution) => Math.abs(factor) * input.u;
  const uncertain = all.filter((one) => size(one) > 0);
  const straight = uncertain.filter(({ input }) => input.shape === "rectangular");
  const curved = uncertain.filter(({ input }) => input.shape !== "rectangular");
  const largest = curved.sort((a, b) => size(b) - size(a))[0];
  const beside = Math.hypot(...straight.map(size));
  return largest && size(largest) > 0.1 * beside ? [largest, ...straight] : straight;
}

/** Trials in one block, and blocks at least: together the 10⁴ that JCGM 101:2008, 7.9.4 starts from. */
const block = 2048;
const leastBlocks = 5;
const mostBlocks = 16;

function filled(out: Float64Array, from: number, values: Batch): void {
  if (typeof values === "number") out.fill(values, from, from + block);
  else out.set(values, from);
}

/** What a propagation starts from. */
export interface Propagation {
  /** contributions that enter the displaced mass alone */
  open: readonly OpenContribution[];
  /** of each input to the density, signed */
  contributions: readonly number[];
  /** interval to start from, kg/m³ */
  guess: readonly [number, number];
  confidence: number;
  /** standard uncertainty by GUM, kg/m³ */
  u: number;
}

/**
 * Propagates the distributions of all inputs to the density (JCGM 101:2008), to a fifth of the tolerance for two digits
 * of u. In one stroke where the inputs are independent and the model all but straight (implicit-density.ts), which its
 * trials must show; by trials alone elsewhere.
 */
export function distribute(
  parts: DensityParts,
  inputs: Inputs,
  model: Weighed<Quantity>,
  options: Propagation,
  random: Random32,
): DensityDistribution {
  const implicit = implicitDensity(parts, inputs, model, options.contributions, random);
  return (implicit && inOneStroke(implicit, options)) ?? byTrials(parts, inputs, options, random);
}

/** How much of the sum's deviation may be bent, and of the tolerance the ends may move by it: both leave a fifth of it. */
const bentAtMost = 0.03;
const movedAtMost = 1;

function inOneStroke(
  implicit: ImplicitDensity,
  { guess, confidence, u }: Propagation,
): DensityDistribution | null {
  const { at, mean, u: spread, movedAt, bent, trials } = implicit;
  const moved = Math.max(...[-2, 2].map((z) => Math.abs(movedAt(z))));
  if (bent > bentAtMost || moved > movedAtMost * numericalTolerance(u, 2)) return null;
  const end = (p: number, from: number) => quantile(at, p, from, u);
  const interval = [end((1 - confidence) / 2, guess[0]), end((1 + confidence) / 2, guess[1])] as const;
  return { mean, u: spread, interval, count: trials, settled: true, at, roughly: at };
}

/** Plain trials with the adaptive rule of JCGM 101:2008, 7.9. */
function byTrials(
  parts: DensityParts,
  inputs: Inputs,
  options: Propagation,
  random: Random32,
): DensityDistribution {
  const { guess, confidence } = options;
  const trials = trialsOf(parts, inputs, options, random);
  const width = (guess[1] - guess[0]) / 4;
  // each block starts from the ends of the one before
  let ends = guess;
  const endsOf = (of: DensityTrials) => {
    const at: Cumulative = (y) => trialsAt(of, y);
    const from = (end: 0 | 1) => (Number.isFinite(ends[end]) ? ends[end] : guess[end]);
    ends = [
      quantile(at, (1 - confidence) / 2, from(0), width),
      quantile(at, (1 + confidence) / 2, from(1), width),
    ];
    return ends;
  };
  const run = adaptive(
    () => {
      const moments = trials.addBlock();
      return [...moments, ...endsOf(trials.part(trials.count - block, trials.count))];
    },
    // value and u are quoted from GUM; with few readings their scatter over blocks has no bound
    { digits: 2, part: 0.2, blocks: [leastBlocks, mostBlocks], watched: "ends" },
  );
  const all = trials.part(0, trials.count);
  return {
    mean: run.averages[0],
    u: run.averages[1],
    interval: endsOf(all),
    count: trials.count,
    settled: run.settled,
    at: (y) => trialsAt(all, y),
    roughly: (y) => trialsAt(trials.part(0, block), y),
  };
}

/** Trials that grow by blocks; `addBlock` gives mean and u of the densities of the new one, kg/m³. */
function trialsOf(parts: DensityParts, inputs: Inputs, options: Propagation, random: Random32) {
  const open = leftOpen(options.open);
  const openSum = convolution(
    open.map(({ input, factor }) => ({ u: Math.abs(factor) * input.u, shape: input.shape, dof: input.dof })),
  );
  const draws = sampler(inputs, options.contributions, block, random);
  const b = batches(block);
  const kept = {
    a: new Float64Array(mostBlocks * block),
    displaced: new Float64Array(mostBlocks * block),
    air: new Float64Array(mostBlocks * block),
  };
  const results = new Float64Array(block);
  let done = 0;
  return {
    get count() {
      return done;
    },
    part: (from: number, to: number): DensityTrials => ({
      a: kept.a.subarray(from, to),
      displaced: kept.displaced.subarray(from, to),
      air: kept.air.subarray(from, to),
      open: openSum,
    }),
    addBlock() {
      draws.begin();
      const columns = draws.draw(0);
      b.start();
      const of = (input: Input) => columns[input.index]!;
      const w = weighed<Batch>(parts, b, of);
      const moved = sum(
        b,
        open.map(({ input, factor }) => b.times(b.minus(of(input), input.value), factor)),
      );
      filled(
        kept.a,
        done,
        b.over(b.times(w.dryGrams, b.minus(w.liquidKgPerM3, of(parts.airKgPerM3))), w.scale),
      );
      filled(kept.displaced, done, b.minus(b.over(w.displacedGrams, w.scale), moved));
      filled(kept.air, done, of(parts.airKgPerM3));
      filled(results, 0, w.kgPerM3);
      done += block;
      return momentsOf(results);
    },
  };
}
