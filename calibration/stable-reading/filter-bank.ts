import { type Expected, MotionFilter, type Swing } from "./motion-filter.ts";
import { type Motion, motions } from "./motions.ts";
import type { Noise } from "./noise.ts";
import type { Tail } from "./tail.ts";

/** Shares of readings that creep by more than can be neglected, and of slow mechanisms. */
export interface Expectation {
  creep: number;
  slow: number;
}

/** A load that was just put on. Common practice: of the immersed ones 5 % creep. */
export const justPutOn: Expectation = { creep: 0.05, slow: 0.03 };
/** A load that was seen at rest before. */
export const restedBefore: Expectation = { creep: 0.005, slow: 0.001 };

/** Least variance of the white noise, d²: rounding, which is not white where the noise is small. */
const leastVariance = 0.3 ** 2;

/** One filter with what it weighs among the others. */
export interface Weighed {
  filter: MotionFilter;
  /** shares sum to 1 */
  share: number;
  /** variance of its white noise, d² */
  whiteVariance: number;
  /** variance of noise and draught as seen, d², hardly leaning on what was known before */
  seenVariance: number;
}

/** What the filters together expect of a value, in steps d. */
interface Outlook {
  /** value less what is expected */
  off: number;
  variance: number;
}

/** One filter with the logarithm of what it weighs before anything is seen. */
interface PriorFilter {
  filter: MotionFilter;
  noise: Noise;
  prior: number;
}

/** A filter for every motion with every trembling, from the first value of a plateau on. Values are in d from it. */
export class FilterBank {
  readonly #make: () => PriorFilter[];
  #made: PriorFilter[] | undefined;
  /** values seen, those long ago counting less */
  #count = 1;

  /** `tail` is what the mechanism still brings; it is asked for once a second value comes that stays. */
  constructor(noises: readonly Noise[], tail: () => Tail, expectation: Expectation) {
    this.#make = () => filtersOf(noises, tail(), expectation);
  }

  get #filters(): PriorFilter[] {
    this.#made ??= this.#make();
    return this.#made;
  }

  get count(): number {
    return this.#count;
  }

  /** Goes on to a value: `outlook` says what was expected of it, `take` lets the filters learn it. */
  next(value: number, seconds: number, age: number): { outlook(): Outlook; take(): void } {
    this.#count /= Math.exp(seconds / 15);
    let predicted: Expected[] | undefined;
    const expected = (): Expected[] => {
      predicted ??= this.#filters.map(({ filter }) => filter.predict(value, seconds, age));
      return predicted;
    };
    return {
      outlook: () => {
        const each = expected();
        const weights = this.#weights(this.#count);
        const mean = sum(weights, (w, i) => w.share * each[i]!.off);
        const variance = sum(weights, (w, i) => {
          const { off, variance: own } = each[i]!;
          return w.share * ((own * w.scale) / w.shape + (off - mean) ** 2);
        });
        return { off: mean, variance };
      },
      take: () => {
        const each = expected();
        this.#count += 1;
        this.#filters.forEach(({ filter }, i) => {
          filter.update(each[i]!, age);
        });
      },
    };
  }

  /** Every filter with its weight. */
  weighed(): Weighed[] {
    const count = this.#count - 1;
    return this.#weights(count).map(({ share, scale, shape }, i) => {
      const { filter, noise } = this.#filters[i]!;
      const seen = (noise.scale / 4 + filter.squares / 2) / (noise.weight / 4 + count / 2);
      return { filter, share, whiteVariance: scale / (shape - 1), seenVariance: seen * (1 + noise.ratio) };
    });
  }

  /** Shares by how well each filter foretold what came, its white noise unknown: Student's distribution. */
  #weights(count: number): { share: number; shape: number; scale: number }[] {
    const each = this.#filters.map(({ filter, noise, prior }) => {
      const shape = noise.weight + count / 2;
      const scale = Math.max(noise.scale + filter.squares / 2, shape * leastVariance);
      return { shape, scale, log: filter.logLikelihood - shape * Math.log(scale) + prior };
    });
    const most = Math.max(...each.map(({ log }) => log));
    const shares = each.map(({ log }) => Math.exp(log - most));
    const total = shares.reduce((all, share) => all + share, 0);
    return each.map(({ shape, scale }, i) => ({ shape, scale, share: shares[i]! / total }));
  }
}

function filtersOf(noises: readonly Noise[], tail: Tail, { creep, slow }: Expectation): PriorFilter[] {
  const prior = (motion: Motion) => {
    const alike = motions.filter(({ kind, creeps }) => kind !== "rest" && creeps === motion.creeps).length;
    if (motion.kind === "rest") return 1 - creep - slow;
    return (motion.creeps ? creep : slow) / alike;
  };
  return motions.flatMap((motion) =>
    noises.map((noise) => ({
      filter: new MotionFilter(motion, noise, swingOf(tail, noise)),
      noise,
      // the last term makes shares of unequal scales comparable: the inverse gamma distribution, normalised
      prior: Math.log(prior(motion) * noise.share) + noise.weight * Math.log(noise.scale),
    })),
  );
}

function sum<T>(items: readonly T[], of: (item: T, index: number) => number): number {
  return items.reduce((total, item, i) => total + of(item, i), 0);
}

function swingOf(
  { left, steps, tauSeconds, roughSteps, roughTauSeconds }: Tail,
  { scale, weight }: Noise,
): Swing {
  const white = Math.max(scale / weight, leastVariance);
  return {
    left,
    variance: steps ** 2 / white,
    tauSeconds,
    roughVariance: roughSteps ** 2 / white,
    roughTauSeconds,
  };
}
