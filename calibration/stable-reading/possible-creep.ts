import { mean } from "../mean.ts";
import type { Weighed } from "./filter-bank.ts";
import { basis, creepTausSeconds } from "./motions.ts";

/**
 * No reading is taken while a creep may still bring what this one would: some steps d when the load was put on, some
 * 2.5 s before the display comes to rest. A creep that goes the way of the swing hides in it and is looked at more
 * closely. `deviations` weighs the wait against the creep of 1 mg and 12 s on a display of 0.1 mg that is taken unflagged
 * and then told by the watch (loads each way, wait from rest, noise 0.4 d, five lines a second):
 *
 *     rising, falling   wait median, p95   taken unflagged, rising and falling   of these not told within 25 s
 *     2.0, 1.5          1.8 s, 2.7 s       14 %, 15 % of 150                     0
 *     2.1, 2.0          1.9 s, 2.8 s       10 %, 10 % of 300                     0
 *     2.7, 2.7          2.5 s, 3.4 s        3 %,  2 % of 200                     0
 *
 * Within 2 s no rule excludes it, so that what is not excluded is flagged and watched (`possibleCreep`). The best estimate that these lines allow (least squares of
 * level, swing with a known response, and creep, from 20 d on; roundings as d²/12) knows 2 s after rest what a creep of
 * 1 mg still brings, 6.0 d for 12 s, 7.3 d for 20 s, 8.6 d for 40 s, to 2.1, 3.7 and 7.7 d. A rule that has taken half of
 * the still loads by then takes what lies within 0.67 of these, and so 1.7, 10 and 33 % of such creeps at that one look
 * alone; one that takes 0.1 % waits until 2.8, 3.6 and 5.4 s. Looking five times a second adds to it.
 */
const guarded = {
  steps: 9.5,
  putOnSeconds: 2.5,
  leastSteps: 3,
  tausSeconds: [6, 9, 13],
  deviations: { rising: 2.1, falling: 2 },
};

/** The most that a creep may still bring over what is allowed for its time constant; above 1 it is not taken. */
export function openOf(filters: readonly Weighed[], age: number): number {
  const { steps, putOnSeconds, leastSteps, deviations } = guarded;
  return Math.max(
    ...guarded.tausSeconds.map((tau) => {
      const allowed = steps * Math.exp(-(age + putOnSeconds) / tau);
      return mostLeft(filters, { age, tau }, deviations) / Math.max(leastSteps, allowed);
    }),
  );
}

/** A creep that a reading was taken before it could be excluded. */
export interface PossibleCreep {
  /** what it may still bring, d: the 95 % limit, root mean square over the time constants, no more than bubbles bring */
  steps: number;
  /** it will be excluded after so many s more if nothing comes, s */
  seconds: number;
}

/**
 * The creep looked for once a reading is taken: 1 mg when the load was put on, or 5 d where the display shows no less.
 * It is excluded where no time constant of bubbles leaves so much within so many deviations, looked at five times a second.
 */
const lookedFor = { grams: 0.001, leastSteps: 5, putOnSeconds: 4, leastLeftSteps: 1.5, deviations: 3.3 };
/** A forecast looks so far ahead, in looks of so many s. */
const forecast = { mostSeconds: 60, everySeconds: 0.5 };
const ninetyFivePercent = 1.96;

/** The creep that the lines so far do not exclude, on a display of this step in g; undefined once they exclude it. */
export function possibleCreep(
  filters: readonly Weighed[],
  age: number,
  stepGrams: number,
): PossibleCreep | undefined {
  const size = Math.max(lookedFor.grams / stepGrams, lookedFor.leastSteps);
  const each = creepTausSeconds.map((tau) => ({
    tau,
    limit: mostLeft(filters, { age, tau }, alike(lookedFor.deviations)),
    likely: mostLeft(filters, { age, tau }, alike(ninetyFivePercent)),
  }));
  // a slope is known with the power 3/2 of the time it was looked at
  const excludedAt = (at: number) =>
    each.every(({ tau, limit }) => {
      const { putOnSeconds, leastLeftSteps } = lookedFor;
      const allowed = Math.max(leastLeftSteps, size * Math.exp(-(at + putOnSeconds) / tau));
      return limit * (age / at) ** 1.5 <= allowed;
    });
  if (excludedAt(age)) return undefined;
  let seconds = forecast.everySeconds;
  while (seconds < forecast.mostSeconds && !excludedAt(age + seconds)) seconds += forecast.everySeconds;
  const steps = Math.min(Math.sqrt(mean(each.map(({ likely }) => likely ** 2))), bubbles.most / stepGrams);
  return { steps, seconds };
}

/**
 * What is known of an immersed reading before it is seen: one in twenty creeps, by 0.05 to 10 mg, each order of magnitude
 * as likely as another. Common practice.
 */
const bubbles = { share: 0.05, least: 0.000_05, most: 0.01 };

/**
 * Standard uncertainty, in g, that a creep leaves which was only excluded above so many g: the root of the mean square of
 * what one in twenty brings, ∫ s² d(ln s) from nothing to `most`.
 */
export const uOfPossible = (most: number) =>
  most * Math.sqrt(bubbles.share / (2 * Math.log(bubbles.most / bubbles.least)));

interface Deviations {
  rising: number;
  falling: number;
}

const alike = (deviations: number): Deviations => ({ rising: deviations, falling: deviations });

/** The most that a creep of this time constant still brings within so many deviations, d. */
function mostLeft(
  filters: readonly Weighed[],
  { age, tau }: { age: number; tau: number },
  { rising, falling }: Deviations,
): number {
  let [shares, total] = [0, 0];
  for (const { filter, share, whiteVariance } of filters) {
    if (filter.motion.tauSeconds !== tau) continue;
    const { amplitude } = filter;
    const sd = Math.sqrt(whiteVariance * filter.aa);
    shares += share;
    total += share * basis(filter.motion, age) * Math.max(-amplitude + rising * sd, amplitude + falling * sd);
  }
  return total / shares;
}
