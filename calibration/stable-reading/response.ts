import { median } from "../median.ts";
import type { Ring } from "./ring.ts";

/** How the mechanism of a bench comes to rest: mean and standard deviation of the logarithm of its time constant, s. */
export interface Response {
  logTau: number;
  spread: number;
}

/** So many of the last loads count. */
const remembered = 12;
/** A mechanism differs from load to load by at least so much, by so much where one load alone was seen. */
const spreads = { least: 0.04, ofOne: 0.2 };

/** Learns from load to load how the display comes to rest. */
export class LearnedResponse {
  #logTaus: number[] = [];
  #rings: Ring[] = [];

  /** What the swing of one load left that followed no exponential. */
  hearRing(ring: Ring): void {
    this.#rings = [...this.#rings, ring].slice(-remembered);
  }

  /** Root mean square of their sizes, before the first load as expected, which counts as one load ever after; median decay. */
  get ring(): Ring {
    const squares = this.#rings.reduce((sum, { size }) => sum + size * size, 1);
    const logTaus = this.#rings.flatMap(({ logTau }) => logTau ?? []);
    return {
      size: Math.sqrt(squares / (this.#rings.length + 1)),
      logTau: logTaus.length === 0 ? undefined : median(logTaus),
    };
  }

  /** The time constant of one load that came to rest, as it was fitted. */
  hear(logTau: number): void {
    this.#logTaus = [...this.#logTaus, logTau].slice(-remembered);
  }

  /** What is known now; nothing before the first load. */
  get known(): Response | undefined {
    const n = this.#logTaus.length;
    if (n === 0) return undefined;
    const mean = this.#logTaus.reduce((sum, one) => sum + one, 0) / n;
    const squares = this.#logTaus.reduce((sum, one) => sum + (one - mean) ** 2, spreads.ofOne ** 2 / n);
    return { logTau: mean, spread: Math.max(spreads.least, Math.sqrt(squares / n)) };
  }
}
