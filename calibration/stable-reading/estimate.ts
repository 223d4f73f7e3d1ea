import type { Weighed } from "./filter-bank.ts";
import { type Part, quantile } from "./mixture.ts";
import { basis, slope } from "./motions.ts";
import { openOf } from "./possible-creep.ts";
import { roundingLeft } from "./rounding-left.ts";

/** So much of what a motion still brings counts against the wish to take; it need not be one exponential. */
const doubtOfMotion = 0.6;
/** The same in the uncertainty that is stated. */
const statedDoubtOfMotion = 1;

/** Where the display is going and how well that is known; all in steps d about the first value of the plateau. */
export interface Estimate {
  /** mean of where it ends, and of what it shows now */
  end: number;
  now: number;
  nowVariance: number;
  /** how fast it moves now, steps a second */
  perSecond: number;
  /** how far the end may be off: its spread, doubt of the motion, and what rounding leaves */
  risk: number;
  /** share of the filters that creep */
  creeping: number;
  /** share of a slow mechanism, what it still brings, and what it brought in all */
  slow: { share: number; left: number; began: number };
  /** the most that creep may still bring, over what is allowed */
  open: number;
  roundingVariance: number;
}

/** What each of the given filters says of the moment, weighted together. */
export function estimateOf(filters: readonly Weighed[], age: number): Estimate {
  let [end, now, ends, shows, own, nowOwn, creeping, seen, moved] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  let [slow, left, began, perSecond] = [0, 0, 0, 0];
  for (const { filter, share, whiteVariance, seenVariance } of filters) {
    const { motion, level, amplitude } = filter;
    const e = basis(motion, age);
    const shown = level + amplitude * e;
    end += share * level;
    now += share * shown;
    ends += share * level * level;
    shows += share * shown * shown;
    own += share * whiteVariance * filter.ll;
    nowOwn += share * whiteVariance * filter.showsVariance(age);
    seen += share * seenVariance;
    perSecond += share * amplitude * slope(motion, age);
    moved += share * (amplitude * (1 - e)) ** 2;
    if (motion.creeps) creeping += share;
    else if (motion.kind === "fading") {
      slow += share;
      left += share * amplitude * e;
      began += share * amplitude;
    }
  }
  // what spreads the values about one rounding step, without the rounding itself
  const roundingVariance = roundingLeft(Math.max(0, seen - 1 / 12) + moved / 12);
  const variance = own + Math.max(0, ends - end * end);
  const some = Math.max(slow, 1e-9);
  return {
    end,
    now,
    perSecond,
    nowVariance: nowOwn + Math.max(0, shows - now * now),
    risk: Math.sqrt(variance + (doubtOfMotion * (end - now)) ** 2 + roundingVariance),
    creeping,
    slow: { share: slow, left: Math.abs(left) / some, began: Math.abs(began) / some },
    open: openOf(filters, age),
    roundingVariance,
  };
}

/** Value and uncertainty to be stated, in steps d. */
export interface Stated {
  value: number;
  /** half the wider side of the 95 % interval over 1.96 */
  u: number;
  /** what noise and rounding leave, without what may still come */
  uRead: number;
}

/** 95 % of a rectangle lie within 0.475 of its width, which is 1.645 of its standard deviations, not 1.96. */
const rectangle = (0.475 * Math.sqrt(12)) / 1.96;

export function statedOf(filters: readonly Weighed[], age: number, leftByRounding: number): Stated {
  const roundingVariance = leftByRounding * rectangle ** 2;
  const parts = filters.map(({ filter, share, whiteVariance }): Part => {
    const still = statedDoubtOfMotion * (filter.level - filter.shows(age));
    return {
      share,
      mean: filter.level,
      sd: Math.sqrt(whiteVariance * filter.ll + still ** 2 + roundingVariance),
    };
  });
  const [low, value, high] = [0.025, 0.5, 0.975].map((p) => quantile(parts, p)) as [number, number, number];
  const u = Math.max(high - value, value - low) / 1.96;
  const resting = filters.filter(({ filter }) => filter.motion.kind === "rest");
  const share = resting.reduce((total, one) => total + one.share, 0);
  const read =
    resting.reduce((total, one) => total + one.share * one.whiteVariance * one.filter.ll, 0) /
    Math.max(1e-9, share);
  return { value, u, uRead: Math.min(u, Math.sqrt(read + roundingVariance)) };
}
