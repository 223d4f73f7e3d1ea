import { basis, type Motion } from "./motions.ts";

/** How the display trembles: draught beside white noise. */
export interface Trembling {
  /** variance of the draught over the variance of the white noise */
  ratio: number;
  /** time over which the draught forgets itself, s */
  tauSeconds: number;
}

/** What is left of the mechanism's own swing when a plateau begins; variances over that of the white noise. */
export interface Swing {
  /** an exponential of about this size, d */
  left: number;
  /** how far that may be off */
  variance: number;
  tauSeconds: number;
  /** what follows no exponential */
  roughVariance: number;
  roughTauSeconds: number;
}

/** What a filter expects of the next value, in steps d. */
export interface Expected {
  /** value less what is expected */
  off: number;
  /** variance of that, over the variance of the white noise */
  variance: number;
}

/** Standard deviation of a motion's amplitude before anything is seen, over that of the white noise. */
const priorAmplitude = 200;
/** Old lines fade: a motion need not be one exponential for ever, s. */
const memorySeconds = 15;

/**
 * Kalman filter of one motion with one trembling: value = level + amplitude·basis(t) + draught + white noise, all in
 * steps d about the first value; variances are those over the variance of the white noise, which is common scale.
 */
export class MotionFilter {
  readonly motion: Motion;
  readonly trembling: Trembling;
  level = 0;
  amplitude = 0;
  draught = 0;
  /** covariances: l level, a amplitude, d draught */
  ll: number;
  la: number;
  ld: number;
  aa: number;
  ad = 0;
  dd: number;
  /** what is left of the swing, and its covariances */
  swing = 0;
  ls: number;
  as = 0;
  ds = 0;
  ss: number;
  readonly #swing: Swing;
  /** −½ Σ ln of the expected variances */
  logLikelihood = 0;
  /** Σ off²/variance */
  squares = 0;

  /** Begins at its first value, which is 0 and has this variance beside the white noise. */
  constructor(motion: Motion, trembling: Trembling, swing: Swing) {
    this.#swing = swing;
    this.motion = motion;
    this.swing = swing.left;
    this.level = -swing.left;
    this.trembling = trembling;
    const amplitude = motion.kind === "rest" ? 0 : priorAmplitude ** 2;
    const starts = basis(motion, 0);
    this.ll = amplitude * starts + trembling.ratio + 1 + swing.variance + swing.roughVariance;
    this.ls = -swing.variance;
    this.ss = swing.variance;
    this.la = -amplitude * starts;
    this.ld = -trembling.ratio;
    this.aa = amplitude;
    this.dd = trembling.ratio;
  }

  /** The state after so many s, and what it expects of a value `age` s after the first that has more variance. */
  predict(value: number, seconds: number, age: number): Expected {
    const fade = Math.exp(seconds / memorySeconds);
    const kept = Math.exp(-seconds / this.trembling.tauSeconds);
    this.draught *= kept;
    this.ll *= fade;
    this.la *= fade;
    this.aa *= fade;
    this.ld *= fade * kept;
    this.ad *= fade * kept;
    this.dd = fade * kept * kept * this.dd + (1 - kept * kept) * this.trembling.ratio;
    const left = Math.exp(-seconds / this.#swing.tauSeconds);
    this.swing *= left;
    this.ls *= fade * left;
    this.as *= fade * left;
    this.ds *= fade * left * kept;
    this.ss *= fade * left * left;
    this.logLikelihood /= fade;
    this.squares /= fade;
    const e = basis(this.motion, age);
    const { l, a, d, s } = this.#gains(e);
    const rough = this.#swing.roughVariance * Math.exp((-2 * age) / this.#swing.roughTauSeconds);
    return {
      off: value - this.shows(age) - this.draught - this.swing,
      variance: l + e * a + d + s + 1 + rough,
    };
  }

  update({ off, variance }: Expected, age: number): void {
    const { l, a, d, s } = this.#gains(basis(this.motion, age));
    this.level += (l / variance) * off;
    this.amplitude += (a / variance) * off;
    this.draught += (d / variance) * off;
    this.swing += (s / variance) * off;
    this.ll -= (l * l) / variance;
    this.la -= (l * a) / variance;
    this.ld -= (l * d) / variance;
    this.aa -= (a * a) / variance;
    this.ad -= (a * d) / variance;
    this.dd -= (d * d) / variance;
    this.ls -= (l * s) / variance;
    this.as -= (a * s) / variance;
    this.ds -= (d * s) / variance;
    this.ss -= (s * s) / variance;
    this.logLikelihood -= 0.5 * Math.log(variance);
    this.squares += off ** 2 / variance;
  }

  /** What the display would show now without draught and noise. */
  shows(age: number): number {
    return this.level + this.amplitude * basis(this.motion, age);
  }

  /** Variance of that, over the variance of the white noise. */
  showsVariance(age: number): number {
    const e = basis(this.motion, age);
    return this.ll + 2 * e * this.la + e * e * this.aa;
  }

  #gains(e: number) {
    return {
      l: this.ll + this.la * e + this.ld + this.ls,
      a: this.la + this.aa * e + this.ad + this.as,
      d: this.ld + this.ad * e + this.dd + this.ds,
      s: this.ls + this.as * e + this.ds + this.ss,
    };
  }
}
