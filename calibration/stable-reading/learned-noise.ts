import type { Noise } from "./noise.ts";
import { usualNoise } from "./noise.ts";

/** What was seen longer ago counts less, s: a door is opened, a fan starts. */
const memorySeconds = 180;
/** A zero wanders by so many d in a root of a second. */
const wandering = 0.02;
/** What was learned is trusted like so many lines at most, so that a new load may contradict it. */
const mostWeight = 10;
/** No way of trembling is ever ruled out. */
const leastShare = 0.01;

/** Level and draught of one way of trembling; variances over that of the white noise. */
interface Follower {
  level: number;
  draught: number;
  ll: number;
  ld: number;
  dd: number;
  logLikelihood: number;
  squares: number;
}

/** Learns how this display trembles on this bench from points at rest, of whatever load. */
export class LearnedNoise {
  readonly #prior: readonly Noise[];
  readonly #followers: Follower[];
  #last: { seconds: number; z: number; start: number } | undefined;
  #count = 0;

  constructor(prior: readonly Noise[] = usualNoise) {
    this.#prior = prior;
    this.#followers = prior.map(() => ({
      level: 0,
      draught: 0,
      ll: 0,
      ld: 0,
      dd: 0,
      logLikelihood: 0,
      squares: 0,
    }));
  }

  /** One point at rest, in steps d about anything; `start` tells one plateau from another. */
  hear(seconds: number, z: number, start: number): void {
    const last = this.#last;
    this.#last = { seconds, z, start };
    if (!last || last.start !== start) {
      this.#followers.forEach((one, i) => {
        const { ratio } = this.#prior[i]!;
        Object.assign(one, { level: z, draught: 0, ll: ratio + 1, ld: -ratio, dd: ratio });
      });
      return;
    }
    const since = Math.max(0, seconds - last.seconds);
    const fade = Math.exp(-since / memorySeconds);
    this.#count = this.#count * fade + 1;
    this.#followers.forEach((one, i) => {
      follow(one, this.#prior[i]!, { z, since, fade });
    });
  }

  /** What is known now: the prior until something was seen. */
  noises(): readonly Noise[] {
    const shape = (noise: Noise) => noise.weight + this.#count / 2;
    const scale = (noise: Noise, i: number) => noise.scale + this.#followers[i]!.squares / 2;
    const logs = this.#prior.map(
      (noise, i) =>
        Math.log(noise.share) + this.#followers[i]!.logLikelihood - shape(noise) * Math.log(scale(noise, i)),
    );
    const most = Math.max(...logs);
    const shares = logs.map((log) => Math.exp(log - most));
    const total = shares.reduce((sum, one) => sum + one, 0);
    return this.#prior.map((noise, i) => {
      const weight = Math.min(shape(noise), mostWeight);
      const share = Math.max(leastShare * noise.share, shares[i]! / total);
      return { ...noise, share, weight, scale: (scale(noise, i) / shape(noise)) * weight };
    });
  }
}

function follow(
  one: Follower,
  { ratio, tauSeconds }: Noise,
  { z, since, fade }: { z: number; since: number; fade: number },
): void {
  const kept = Math.exp(-since / tauSeconds);
  one.draught *= kept;
  one.ll += wandering ** 2 * since;
  one.ld *= kept;
  one.dd = kept * kept * one.dd + (1 - kept * kept) * ratio;
  const l = one.ll + one.ld;
  const d = one.ld + one.dd;
  const variance = l + d + 1;
  const off = z - one.level - one.draught;
  one.level += (l / variance) * off;
  one.draught += (d / variance) * off;
  one.ll -= (l * l) / variance;
  one.ld -= (l * d) / variance;
  one.dd -= (d * d) / variance;
  one.logLikelihood = one.logLikelihood * fade - 0.5 * Math.log(variance);
  one.squares = one.squares * fade + off ** 2 / variance;
}
