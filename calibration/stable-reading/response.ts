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
  #roughnesses: number[] = [];

  /** What the swing of one load left that followed no exponential (swing-fit.ts). */
  hearRoughness(roughness: number): void {
    this.#roughnesses = [...this.#roughnesses, roughness].slice(-remembered);
  }

  /** Root mean square of these; before the first load as expected, which counts as one load ever after. */
  get roughness(): number {
    const squares = this.#roughnesses.reduce((sum, one) => sum + one * one, 1);
    return Math.sqrt(squares / (this.#roughnesses.length + 1));
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
