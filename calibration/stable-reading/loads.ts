import type { KnownDisplay } from "./known-display.ts";
import { LearnedNoise } from "./learned-noise.ts";
import { emptySteps, LoadReading } from "./load-reading.ts";
import { createPoints, type Point, type StableLine } from "./points.ts";
import { LearnedResponse } from "./response.ts";
import type { Judgement, TakenValue } from "./stable-reading.ts";

/** Drops on a hanger that comes out of the water: at most this share of the load before, and so many g. */
const drops = { share: 0.1, grams: 0.3 };
/** The end of a swing tells nothing of the noise, s. */
const swingSeconds = 1.5;
/** The display must have stayed for so long after a point, s. */
const stayedSeconds = 1;

/** What happened with the line that was heard last. */
export interface LoadsStep {
  judgement: Judgement;
  /** since when nothing large moved, s */
  since: number;
  /** the load came to rest: given once for each */
  taken?: TakenValue;
  /** the display moved on by so much while the load stayed: given once for each */
  changed?: number;
  /** a creep that was possible when the reading was taken is excluded by now: given once for each */
  excluded?: true;
}

/** Takes every load that comes to rest once, and learns on the way how this display trembles. Values are in g. */
export class Loads {
  readonly #noise = new LearnedNoise();
  readonly #response = new LearnedResponse();
  readonly #points = createPoints();
  #load = new LoadReading(() => this.known());
  /** what lay there before, until the pan was seen empty */
  #before = 0;
  #toldChange = false;
  /** the reading was flagged for a creep that is not excluded yet */
  #flagged = false;
  #unlearned: (Point & { since: number })[] = [];

  /** what is known of this display */
  known(): KnownDisplay {
    const { known: response, ring } = this.#response;
    return { noises: this.#noise.noises(), response, ring };
  }

  hear(line: StableLine): LoadsStep {
    if (this.#isEmpty(line.value, line.step)) this.#before = 0;
    const heard = this.#load.hear(line);
    const { judgement } = heard.next ?? heard;
    if (heard.next) {
      this.#load = heard.next.load;
      this.#toldChange = false;
      this.#flagged = false;
    } else this.#learn(line, judgement);
    const { since } = this.#load;
    if (judgement.state === "taken") {
      const { value, step, flags } = judgement.taken;
      const { logTau, ring } = this.#load;
      if (isSound(judgement.taken) && logTau !== undefined) this.#response.hear(logTau);
      if (isSound(judgement.taken) && ring !== undefined) this.#response.hearRing(ring);
      if (this.#isEmpty(value, step) || this.#areDrops(value)) return { judgement, since };
      this.#before = Math.abs(value);
      this.#flagged = flags.includes("creep-possible");
      return { judgement, since, taken: judgement.taken };
    }
    if (judgement.state === "after" && judgement.moved !== undefined && !this.#toldChange) {
      this.#toldChange = true;
      if (!this.#isEmpty(judgement.taken.value, judgement.taken.step))
        return { judgement, since, changed: judgement.moved };
    }
    if (this.#flagged && judgement.state === "after" && judgement.possibleForSeconds === undefined) {
      this.#flagged = false;
      if (judgement.moved === undefined) return { judgement, since, excluded: true };
    }
    return { judgement, since };
  }

  /** Whatever lies there now may be something else: the cable was lost, or the load was beyond the range. */
  anew(): void {
    this.#load = new LoadReading(() => this.known());
    this.#before = 0;
    this.#toldChange = false;
    this.#flagged = false;
  }

  #isEmpty(value: number, step: number): boolean {
    return Math.abs(value) <= emptySteps * step;
  }

  #areDrops(value: number): boolean {
    return Math.abs(value) <= Math.min(drops.share * this.#before, drops.grams);
  }

  /** A point is learned from once the display stayed on its plateau for a while after it. */
  #learn(line: StableLine, judgement: Judgement): void {
    const point = this.#points(line);
    if (!point) return;
    const { since } = this.#load;
    const atRest = judgement.state === "after" && judgement.moved === undefined && isSound(judgement.taken);
    this.#unlearned = this.#unlearned.filter((one) => one.since === since);
    if (atRest && point.seconds - since >= swingSeconds) this.#unlearned.push({ ...point, since });
    while (this.#unlearned[0] && point.seconds - this.#unlearned[0].seconds >= stayedSeconds) {
      const { seconds, value, step } = this.#unlearned.shift()!;
      this.#noise.hear(seconds, value / step, since);
    }
  }
}

/** True where nothing was seen that speaks against rest. */
const isSound = ({ flags }: TakenValue) => flags.every((flag) => flag === "creep-possible");
