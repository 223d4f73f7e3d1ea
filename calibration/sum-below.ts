import { studentWave } from "./student-wave.ts";

/** A sum of independent contributions, each symmetric about zero; all scales ≥ 0, in one unit. */
export interface Contributions {
  /** standard deviation of all normal ones together */
  normal: number;
  /** half-widths of the rectangular ones */
  widths: readonly number[];
  students: readonly { scale: number; dof: number }[];
}

/** What may be left outside of the period of the sum; errors of the probability stay below it. */
const outside = { normal: 6.5, student: 1e-7 } as const;
/** Terms are added until they fall below this. */
const small = 1e-9;
const mostTerms = 200_000;

/** The t that Student's law exceeds with probability `outside.student`, from its tail c·t^(−dof); generous for many dof. */
function studentReach(dof: number): number {
  return Math.max(8, Math.sqrt(dof) * (1 / (dof * outside.student)) ** (1 / dof));
}

/** Columns of the sines of the widths, the same for every sum. */
let scratch = new Float64Array(3 * 64);

/**
 * Probability that the sum lies below x, and its density there, by inverting the characteristic function: Davies 1973,
 * Biometrika 60, 415–417: ½ + Σ sin((k + ½)·h·x)·φ((k + ½)·h)/(π(k + ½)). The step h = 2π/period leaves an error below the
 * probability that the sum reaches past the period less |x|. Good to about 1e-7.
 */
export function sumBelow({ normal, widths, students }: Contributions, x: number): readonly [number, number] {
  let square = normal * normal;
  let most = 0;
  for (const w of widths) {
    square += (w * w) / 3;
    most += w;
  }
  let reach = Math.min(outside.normal * Math.sqrt(square), outside.normal * normal + most);
  for (const { scale, dof } of students) reach += scale * studentReach(dof);
  const h = (2 * Math.PI) / (reach + Math.max(reach, Math.abs(x)));
  const count = widths.length;
  // sin((k + ½)·h·w) of each width from the two before it: s(k+1) = 2cos(hw)·s(k) − s(k−1)
  if (scratch.length < 3 * count) scratch = new Float64Array(3 * count);
  const sines = scratch;
  for (let i = 0; i < count; i++) {
    const s = Math.sin((h * widths[i]!) / 2);
    sines[3 * i] = -s;
    sines[3 * i + 1] = s;
    sines[3 * i + 2] = 2 * Math.cos(h * widths[i]!);
  }
  const turn = 2 * Math.cos(h * x);
  let [sine, sineBefore] = [Math.sin((h * x) / 2), -Math.sin((h * x) / 2)];
  let [cosine, cosineBefore] = [Math.cos((h * x) / 2), Math.cos((h * x) / 2)];
  let below = 0;
  let density = 0;
  for (let k = 0; k < mostTerms; k++) {
    const t = (k + 0.5) * h;
    let wave = Math.exp(-0.5 * normal * normal * t * t);
    for (const { scale, dof } of students) wave *= studentWave(scale * t, dof);
    let envelope = wave;
    for (let i = 0; i < count; i++) {
      const w = t * widths[i]!;
      const s = sines[3 * i + 1]!;
      wave *= s / w;
      if (w > 1) envelope /= w;
      sines[3 * i + 1] = sines[3 * i + 2]! * s - sines[3 * i]!;
      sines[3 * i] = s;
    }
    below += (sine * wave) / (k + 0.5);
    density += cosine * wave;
    if (envelope < small) break;
    [sine, sineBefore] = [turn * sine - sineBefore, sine];
    [cosine, cosineBefore] = [turn * cosine - cosineBefore, cosine];
  }
  return [0.5 + below / Math.PI, (density * h) / Math.PI];
}
