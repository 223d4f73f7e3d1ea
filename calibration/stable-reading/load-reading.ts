import type { KnownDisplay } from "./known-display.ts";
import type { StableLine } from "./points.ts";
import type { Ring } from "./ring.ts";
import { isAnotherLoad, type Judgement, StableReading } from "./stable-reading.ts";

/** Within so many steps d of zero nothing lies on the pan. */
export const emptySteps = 5;

/**
 * The readings of one load, from its first line until it is lifted. A hand that touches the pan and lets go lifts
 * nothing: lifted is what rests elsewhere, or showed an empty pan in between.
 */
export class LoadReading {
  readonly #known: () => KnownDisplay;
  readonly #reading: StableReading;
  #elsewhere: StableReading | undefined;

  constructor(known: () => KnownDisplay, reading = new StableReading(known())) {
    this.#known = known;
    this.#reading = reading;
  }

  /** since when nothing large moved, s */
  get since(): number {
    return this.#reading.since;
  }

  /** how the mechanism came to rest, s, as a logarithm; undefined where it followed no exponential */
  get logTau(): number | undefined {
    return this.#reading.logTau;
  }

  /** what a swing left that followed no exponential; undefined elsewhere */
  get ring(): Ring | undefined {
    return this.#reading.ring;
  }

  /** `next` is the load after this one, once this one was lifted, with what is known of it already. */
  hear(line: StableLine): { judgement: Judgement; next?: { load: LoadReading; judgement: Judgement } } {
    const judgement = this.#reading.hear(line);
    const taken = this.#reading.taken;
    if (!taken || !isAnotherLoad(line, taken.value)) {
      this.#elsewhere = undefined;
      return { judgement };
    }
    this.#elsewhere ??= new StableReading(this.#known());
    const elsewhere = this.#elsewhere.hear(line);
    const isEmpty = Math.abs(line.value) <= emptySteps * line.step;
    if (!isEmpty && !this.#elsewhere.holds) return { judgement };
    return {
      judgement,
      next: { load: new LoadReading(this.#known, this.#elsewhere), judgement: elsewhere },
    };
  }
}
