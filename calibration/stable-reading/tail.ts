/** What is left of the mechanism's own swing when a plateau begins; sizes in steps d. */
export interface Tail {
  /** value less its level, as foretold, how far that may be off, and how fast it dies */
  left: number;
  steps: number;
  tauSeconds: number;
  /** size of what follows no exponential, and how fast it dies */
  roughSteps: number;
  roughTauSeconds: number;
}

/** A load that was seen at rest before swings no more. */
export const noTail: Tail = { left: 0, steps: 0, tauSeconds: 1, roughSteps: 0, roughTauSeconds: 1 };
