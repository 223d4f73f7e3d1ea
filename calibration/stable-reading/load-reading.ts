import type { Noise } from "./noise.ts";
import type { StableLine } from "./points.ts";
import { isAnotherLoad, type Judgement, StableReading } from "./stable-reading.ts";

/** Within so many steps d of zero nothing lies on the pan. */
export const emptySteps = 5;

/**
 * The readings of one load, from its first line until it is lifted. A hand that touches the pan and lets go lifts
 * nothing: lifted is what rests elsewhere, or showed an empty pan in between.
 */
export class LoadReading {
  readonly #noises: () => readonly Noise[];
  readonly #reading: StableReading;
  #elsewhere: StableReading | undefined;

  constructor(noises: () => readonly Noise[], reading = new StableReading(noises())) {
    this.#noises = noises;
    this.#reading = reading;
  }

  /** since when nothing large moved, s */
  get since(): number {
    return this.#reading.since;
  }

  /** `next` is the load after this one, once this one was lifted, with what is known of it already. */
  hear(line: StableLine): { judgement: Judgement; next?: { load: LoadReading; judgement: Judgement } } {
    const judgement = this.#reading.hear(line);
    const taken = this.#reading.taken;
    if (!taken || !isAnotherLoad(line, taken.value)) {
      this.#elsewhere = undefined;
      return { judgement };
    }
    this.#elsewhere ??= new StableReading(this.#noises());
    const elsewhere = this.#elsewhere.hear(line);
    const isEmpty = Math.abs(line.value) <= emptySteps * line.step;
    if (!isEmpty && !this.#elsewhere.holds) return { judgement };
    return {
      judgement,
      next: { load: new LoadReading(this.#noises, this.#elsewhere), judgement: elsewhere },
    };
  }
}
