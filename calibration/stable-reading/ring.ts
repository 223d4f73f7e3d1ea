import { mean } from "../mean.ts";
import type { Tail } from "./tail.ts";

/** What swings of a bench leave that ring, and so follow no exponential. */
export interface Ring {
  /** their size when a plateau begins, over what is expected of a bench of which nothing is known */
  size: number;
  /** the logarithm of the time constant with which they die, s; unknown before one showed it */
  logTau: number | undefined;
}

/** A swing that rings, before this bench showed how long and how much: sizes d, time constants s. */
const usual: Tail = { left: 0, steps: 2, tauSeconds: 0.4, roughSteps: 3.2, roughTauSeconds: 0.5 };
/** A time constant that was learned is taken for longer by so much, and for no shorter than this, s. */
const learned = { factor: 1.25, leastSeconds: 0.15 };

/** What such a swing leaves when a plateau begins. */
export function unforetold({ size, logTau }: Ring = { size: 1, logTau: undefined }): Tail {
  const tau =
    logTau === undefined ? undefined : Math.max(learned.leastSeconds, learned.factor * Math.exp(logTau));
  return {
    left: 0,
    steps: size * usual.steps,
    tauSeconds: tau ?? usual.tauSeconds,
    roughSteps: size * usual.roughSteps,
    roughTauSeconds: tau ?? usual.roughTauSeconds,
  };
}

/**
 * What a swing left on a plateau, over what is expected: from its first points, how far each is off where it came to
 * rest, d. Noise of this variance, d², is no swing.
 */
export function sizeOf(
  points: readonly { age: number; off: number }[],
  variance: number,
  logTau: number | undefined,
): number {
  const { steps, tauSeconds, roughSteps, roughTauSeconds } = unforetold({ size: 1, logTau });
  let [left, expected] = [0, 0];
  for (const { age, off } of points) {
    left += off ** 2 - variance;
    expected +=
      (steps * Math.exp(-age / tauSeconds)) ** 2 + (roughSteps * Math.exp(-age / roughTauSeconds)) ** 2;
  }
  return expected === 0 ? 1 : Math.sqrt(Math.max(0, left) / expected);
}

interface Step {
  seconds: number;
  /** from the point before, d */
  by: number;
}

/** So many steps show how a swing dies by themselves; two that stand out of the noise by so many deviations roughly. */
const shows = { steps: 4, leastSteps: 2, deviations: 3 };
/** A swing departs from one damped one by this share of itself. */
const departure = 0.02;

/**
 * The logarithm of the time constant, s, with which a swing dies, ringing or not, from points oldest first; `deviation`
 * of one point, d. Undefined where too few points show it.
 */
export function decayOf(
  points: readonly { seconds: number; away: number }[],
  deviation: number,
): number | undefined {
  const all = points.slice(1).map(({ seconds, away }, i): Step => ({ seconds, by: away - points[i]!.away }));
  const largest = Math.max(...all.map(({ by }) => Math.abs(by)));
  // the load itself is no swing: only what comes after the largest step is
  const steps = all.slice(all.findIndex(({ by }) => Math.abs(by) === largest) + 1);
  return steps.length >= shows.steps
    ? dampedDecay(steps, deviation)
    : roughDecay(steps.filter(({ by }) => Math.abs(by) > shows.deviations * deviation));
}

/**
 * Of a damped swing at an even pace each step is a·(the one before) + b·(the one before that), and b = −exp(−2·pace/τ)
 * (Prony's method [from memory]).
 */
function dampedDecay(steps: readonly Step[], deviation: number): number | undefined {
  const pace = (steps.at(-1)!.seconds - steps[0]!.seconds) / (steps.length - 1);
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (let i = 2; i < steps.length; i++) {
    const [z, x, y] = [steps[i]!.by, steps[i - 1]!.by, steps[i - 2]!.by];
    const weight = 1 / (4 * deviation ** 2 + departure ** 2 * (x * x + y * y));
    xx += weight * x * x;
    xy += weight * x * y;
    yy += weight * y * y;
    xz += weight * x * z;
    yz += weight * y * z;
  }
  const b = (xx * yz - xy * xz) / (xx * yy - xy * xy);
  return b < 0 && b > -1 ? Math.log((-2 * pace) / Math.log(-b)) : undefined;
}

/** The slope of ln |step| in time; rough, since a step may fall on a turn of the swing. */
function roughDecay(steps: readonly Step[]): number | undefined {
  if (steps.length < shows.leastSteps) return undefined;
  const t = mean(steps.map(({ seconds }) => seconds));
  const [xx, xy] = steps.reduce(
    ([sxx, sxy], { seconds, by }) => [sxx + (seconds - t) ** 2, sxy + (seconds - t) * Math.log(Math.abs(by))],
    [0, 0],
  );
  return xy < 0 ? Math.log(-xx / xy) : undefined;
}
