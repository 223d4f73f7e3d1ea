import type { Batch } from "./batch.ts";
import { batches } from "./batch.ts";
import { type DensityParts, type Weighed, weighed } from "./density.ts";
import type { Input, Inputs } from "./input.ts";
import type { Quantity } from "./quantity.ts";
import type { Random32 } from "./random.ts";
import { sampler } from "./sampling.ts";
import { type Contributions, sumBelow } from "./sum-below.ts";

/**
 * The density in the form it hangs straight on its inputs: with N = ρa·D + R·(ρL − ρa), ρ lies below y exactly when
 * y·D − N is above zero, and y·D − N is a sum of the inputs, each with a factor of its own, where ρ itself is a ratio. What
 * is not straight in it is found by trials of the whole model and moves the sum by its mean, given the sum.
 */
export interface ImplicitDensity {
  /** probability that the density lies below y, kg/m³, and about its slope there */
  at(y: number): readonly [number, number];
  mean: number;
  u: number;
  /** by how much what is not straight moves the point where the sum is `z` standard deviations, kg/m³ */
  movedAt(z: number): number;
  /** standard deviation of what is not straight, in parts of that of the sum */
  bent: number;
  trials: number;
}

/** Trials of the whole model by which the remainder is found. */
const trials = 256;
/** One set of columns serves every evaluation: they run one after the other. */
const columnsOfTrials = batches(trials);
/** A contribution this small in parts of u acts as a normal one, whatever its shape: its kurtosis counts by the fourth power. */
const shapeless = 0.04;
/** Fewest degrees of freedom whose tails the sum can follow in steps of its own. */
const fewestDof = 3;

interface Straight {
  value: number;
  /** ∂/∂input times u */
  slopes: Float64Array;
}

/** null where the inputs are not independent, or one has fewer degrees of freedom than the sum can follow. */
export function implicitDensity(
  parts: DensityParts,
  inputs: Inputs,
  model: Weighed<Quantity>,
  contributions: readonly number[],
  random: Random32,
): ImplicitDensity | null {
  const active = inputs.all.filter(({ u }) => u > 0);
  const tooFew = active.some(({ shape, dof }) => shape === "student" && dof < fewestDof);
  if (inputs.correlations.length > 0 || tooFew || active.length === 0) return null;
  const air = parts.airKgPerM3;
  const [displaced, balance] = straightForms(model, air, active);
  const middle = balance.value / displaced.value;
  const sum = (y: number) => contributionsAt(active, displaced, balance, y);
  const sigmaAt = (y: number) => deviation(displaced, balance, y);
  const remainder = remainderOf({ parts, inputs, active, contributions, displaced, balance, middle }, random);
  const shift = (y: number, z: number) => y * remainder.displaced(z) - remainder.balance(z);
  return {
    at(y) {
      const [sigma, sigmaSlope] = sigmaAt(y);
      const g = y * displaced.value - balance.value;
      const z = -g / sigma;
      const moved = g + shift(y, z);
      const [below, density] = sumBelow(sum(y), moved);
      return [below, density * (displaced.value - (g * sigmaSlope) / sigma)];
    },
    movedAt: (z) => -shift(middle, z) / displaced.value,
    bent: remainder.deviation / sigmaAt(middle)[0],
    mean: remainder.mean,
    u: remainder.u,
    trials,
  };
}

/** D and N with their slopes, from the model's own derivatives. */
function straightForms(model: Weighed<Quantity>, air: Input, active: readonly Input[]): [Straight, Straight] {
  const { displacedGrams: d, dryGrams: r, liquidKgPerM3: l } = model;
  const a = air.value;
  const of = ({ partials }: Quantity, { index }: Input) => partials[index] ?? 0;
  const slopes = (slope: (input: Input) => number) =>
    Float64Array.from(active, (input) => slope(input) * input.u);
  return [
    { value: d.value, slopes: slopes((input) => of(d, input)) },
    {
      value: a * d.value + r.value * (l.value - a),
      slopes: slopes(
        (input) =>
          a * of(d, input) +
          of(r, input) * (l.value - a) +
          r.value * of(l, input) +
          (input === air ? d.value - r.value : 0),
      ),
    },
  ];
}

const root3 = Math.sqrt(3);

function deviation({ slopes: d }: Straight, { slopes: n }: Straight, y: number): readonly [number, number] {
  let square = 0;
  let slope = 0;
  for (let i = 0; i < d.length; i++) {
    const c = y * d[i]! - n[i]!;
    square += c * c;
    slope += c * d[i]!;
  }
  const sigma = Math.sqrt(square);
  return [sigma, slope / sigma];
}

function contributionsAt(
  active: readonly Input[],
  displaced: Straight,
  balance: Straight,
  y: number,
): Contributions {
  const [sigma] = deviation(displaced, balance, y);
  let square = 0;
  const widths: number[] = [];
  const students: { scale: number; dof: number }[] = [];
  for (let i = 0; i < active.length; i++) {
    const { shape, dof } = active[i]!;
    const c = Math.abs(y * displaced.slopes[i]! - balance.slopes[i]!);
    if (shape === "normal" || (c < shapeless * sigma && (shape === "rectangular" || dof > 8)))
      square += c * c;
    else if (shape === "rectangular") widths.push(root3 * c);
    else students.push({ scale: c, dof });
  }
  return { normal: Math.sqrt(square), widths, students };
}

interface Setting {
  parts: DensityParts;
  inputs: Inputs;
  active: readonly Input[];
  contributions: readonly number[];
  displaced: Straight;
  balance: Straight;
  middle: number;
}

type Curve = (z: number) => number;

/** What D and N of the whole model have beyond their straight forms, as means given the sum, from trials. */
function remainderOf(setting: Setting, random: Random32) {
  const { active, displaced, balance, middle } = setting;
  const { d, n, straightD, straightN } = drawn(setting, random);
  const [sigma] = deviation(displaced, balance, middle);
  const fit = quadraticFit();
  let square = 0;
  let [sum, squares, straightSum, straightSquares] = [0, 0, 0, 0];
  for (let k = 0; k < trials; k++) {
    const z = (middle * straightD[k]! - straightN[k]!) / sigma;
    const restD = d[k]! - displaced.value - straightD[k]!;
    const restN = n[k]! - balance.value - straightN[k]!;
    fit.add(z, restD, restN);
    square += (middle * restD - restN) ** 2;
    const density = n[k]! / d[k]! - middle;
    const straight = (-z * sigma) / displaced.value;
    sum += density;
    squares += density * density;
    straightSum += straight;
    straightSquares += straight * straight;
  }
  const exact = active.reduce((total, { shape, dof }, i) => {
    const c = (middle * displaced.slopes[i]! - balance.slopes[i]!) / displaced.value;
    return total + c * c * (shape === "student" && dof > 2 ? dof / (dof - 2) : 1);
  }, 0);
  const spread = (total: number, ofSquares: number) => ofSquares / trials - (total / trials) ** 2;
  return {
    ...fit.solved(),
    deviation: Math.sqrt(square / trials),
    // the straight part is known exactly, so the trials only tell what it lacks
    mean: middle + (sum - straightSum) / trials,
    u: Math.sqrt(Math.max(0, exact + spread(sum, squares) - spread(straightSum, straightSquares))),
  };
}

/** D and N of each trial, and how far their straight forms move in it. */
function drawn({ parts, inputs, active, contributions, displaced, balance }: Setting, random: Random32) {
  const draws = sampler(inputs, contributions, trials, random);
  draws.begin();
  const columns = draws.draw(0);
  const b = columnsOfTrials;
  b.start();
  const of = (input: Input) => columns[input.index]!;
  const w = weighed<Batch>(parts, b, of);
  const air = of(parts.airKgPerM3);
  const n = b.plus(b.times(air, w.displacedGrams), b.times(w.dryGrams, b.minus(w.liquidKgPerM3, air)));
  const column = (batch: Batch) => (typeof batch === "number" ? new Float64Array(trials).fill(batch) : batch);
  const straightD = new Float64Array(trials);
  const straightN = new Float64Array(trials);
  active.forEach((input, i) => {
    const drawn = column(of(input));
    const [perD, perN] = [displaced.slopes[i]! / input.u, balance.slopes[i]! / input.u];
    for (let k = 0; k < trials; k++) {
      const x = drawn[k]! - input.value;
      straightD[k] = straightD[k]! + perD * x;
      straightN[k] = straightN[k]! + perN * x;
    }
  });
  return { d: column(w.displacedGrams), n: column(n), straightD, straightN };
}

/** Beyond this many standard deviations the means are those there: trials say nothing of it. */
const farthest = 4;

/** Weighted least squares of two rests on 1, z and z²; far trials count little, for a Student's are very far. */
function quadraticFit() {
  const m = [0, 0, 0, 0, 0];
  const d = [0, 0, 0];
  const n = [0, 0, 0];
  return {
    add(z: number, restD: number, restN: number) {
      const weight = Math.exp((-z * z) / 8);
      for (let p = 0, power = weight; p < 5; p++, power *= z) {
        m[p]! += power;
        if (p > 2) continue;
        d[p]! += power * restD;
        n[p]! += power * restN;
      }
    },
    solved(): { displaced: Curve; balance: Curve } {
      const curve = (right: readonly number[]): Curve => {
        const [c0, c1, c2] = solve3(m, right);
        return (z) => {
          const near = Math.max(-farthest, Math.min(farthest, z));
          return c0 + near * (c1 + near * c2);
        };
      };
      return { displaced: curve(d), balance: curve(n) };
    },
  };
}

/** Solves the normal equations of a parabola, moments m0…m4, by Cramer's rule. */
function solve3(m: readonly number[], r: readonly number[]): [number, number, number] {
  const [a, b, c, d, e] = m as [number, number, number, number, number];
  const [x, y, z] = r as [number, number, number];
  const det = a * (c * e - d * d) - b * (b * e - c * d) + c * (b * d - c * c);
  return [
    (x * (c * e - d * d) - b * (y * e - z * d) + c * (y * d - z * c)) / det,
    (a * (y * e - z * d) - x * (b * e - c * d) + c * (b * z - c * y)) / det,
    (a * (c * z - d * y) - b * (b * z - c * y) + x * (b * d - c * c)) / det,
  ];
}
