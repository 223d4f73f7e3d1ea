import type { Response } from "./response.ts";
import { decayOf, type Ring, unforetold } from "./ring.ts";
import type { Tail } from "./tail.ts";

/** What a swing leaves, and the logarithm of its time constant, s: where it follows one, and where it only dies by one. */
export interface Fitted {
  tail: Tail;
  logTau?: number;
  decayLogTau?: number | undefined;
}

/** Time constants tried, s. */
const tried = { least: 0.1, most: 1.6, factor: 1.07 };
const logTaus = Array.from(
  { length: Math.ceil(Math.log(tried.most / tried.least) / Math.log(tried.factor)) },
  (_, i) => Math.log(tried.least) + i * Math.log(tried.factor),
);
/** Points looked at, and how far a mechanism departs from one exponential: share of the swing. */
const fit = { mostPoints: 8, leastPoints: 4, leastKnown: 3, departure: 0.02 };
/** A fit is believed below so much χ² over its degrees of freedom. */
const believed = 3;
const tolerance = { leastSteps: 0.25, factor: 1.3, roughSteps: 0.25, roughShare: 0.04, roughTauSeconds: 0.5 };
/** Foretold further off than this, the plateau begins too early to be foretold, d. */
const mostLeft = 40;

/**
 * The tail as the way here foretells it: points oldest first, the first of the plateau last and itself not used.
 * `deviation`: of one point, d. Time constants are weighed by how well each fits, and by what was learned before.
 */
export function tailOf(
  way: readonly { seconds: number; value: number }[],
  {
    step,
    deviation,
    response,
    ring,
  }: { step: number; deviation: number; response?: Response | undefined; ring?: Ring | undefined },
): Fitted {
  const tail = unforetold(ring);
  const last = way.at(-1);
  if (!last) return { tail };
  const points = way.slice(0, -1).map(({ seconds, value }) => {
    const away = (value - last.value) / step;
    return {
      seconds: seconds - last.seconds,
      away,
      weight: 1 / (deviation ** 2 + (fit.departure * away) ** 2),
    };
  });
  const fewest = response ? fit.leastKnown : fit.leastPoints;
  for (let count = Math.min(fit.mostPoints, points.length); count >= fewest; count--) {
    const fitted = fitOf(points.slice(-count), response);
    if (fitted) return fitted;
  }
  return { tail, decayLogTau: decayOf(points, deviation) };
}

interface Point {
  seconds: number;
  away: number;
  weight: number;
}

function fitOf(points: readonly Point[], response: Response | undefined): Fitted | undefined {
  const fits = logTaus.map((logTau) => {
    const line = straight(points, Math.exp(logTau));
    const off = response ? (logTau - response.logTau) / response.spread : 0;
    return { ...line, logTau, fitness: line.chiSquare + off * off };
  });
  const best = fits.reduce((one, other) => (other.fitness < one.fitness ? other : one));
  const dof = points.length - (response ? 2 : 3);
  if (!(best.chiSquare <= believed * Math.max(1, dof)) || best.logTau === logTaus.at(-1)) return undefined;
  const shares = fits.map(({ fitness }) => Math.exp((best.fitness - fitness) / 2));
  const total = shares.reduce((sum, one) => sum + one, 0);
  const mean = (of: (one: (typeof fits)[number]) => number) =>
    fits.reduce((sum, one, i) => sum + (shares[i]! / total) * of(one), 0);
  const left = mean(({ swing }) => swing);
  const variance = mean(({ swing, variance: own }) => own + (swing - left) ** 2);
  const logTau = mean((one) => one.logTau);
  if (!(Math.abs(left) <= mostLeft)) return undefined;
  return {
    logTau,
    tail: {
      left,
      steps: Math.max(tolerance.leastSteps, tolerance.factor * Math.sqrt(variance)),
      tauSeconds: Math.exp(logTau),
      roughSteps: tolerance.roughSteps + tolerance.roughShare * Math.abs(left),
      roughTauSeconds: tolerance.roughTauSeconds,
    },
  };
}

/** Weighted least squares of away = level + swing·exp(−t/τ), the swing being that at time 0. */
function straight(points: readonly Point[], tau: number) {
  let [w, we, wee, wy, wey, wyy] = [0, 0, 0, 0, 0, 0];
  for (const { seconds, away, weight } of points) {
    const e = Math.exp(-seconds / tau);
    w += weight;
    we += weight * e;
    wee += weight * e * e;
    wy += weight * away;
    wey += weight * e * away;
    wyy += weight * away * away;
  }
  const det = w * wee - we * we;
  const level = (wee * wy - we * wey) / det;
  const swing = (w * wey - we * wy) / det;
  const chiSquare = wyy - level * wy - swing * wey;
  return { swing, variance: w / det, chiSquare };
}
