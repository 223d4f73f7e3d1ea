/** What is left of the mechanism's own swing when a plateau begins; sizes in steps d. */
export interface Tail {
  /** size and time constant of the exponential that is left */
  steps: number;
  tauSeconds: number;
  /** size of what follows no exponential, and how fast it dies */
  roughSteps: number;
  roughTauSeconds: number;
}

/** Where the way here follows no exponential. */
const unforetold: Tail = { steps: 2, tauSeconds: 0.4, roughSteps: 3.2, roughTauSeconds: 0.5 };
/** A load that was seen at rest before swings no more. */
export const noTail: Tail = { steps: 0, tauSeconds: 1, roughSteps: 0, roughTauSeconds: 1 };
/** Least size of a tail, and what of it follows no exponential all the same. */
const doubt = { leastSteps: 1, roughSteps: 0.5, roughShare: 0.15, roughTauSeconds: 0.5 };
/** An exponential is believed when two neighbouring ratios of its steps agree within this factor. */
const agreement = 1.5;
const mostRatio = 0.9;

/**
 * The tail as the last four points foretell it, oldest first, the first of the plateau last. The ratio of an exponential
 * is that of successive steps, taken where they are still large against the noise.
 */
export function tailOf(points: readonly { seconds: number; value: number }[], step: number): Tail {
  if (points.length < 4) return unforetold;
  const last = points.slice(-4);
  const steps = last.slice(1).map(({ value }, i) => (value - last[i]!.value) / step);
  const gaps = last.slice(1).map(({ seconds }, i) => seconds - last[i]!.seconds);
  const gap = (last[3]!.seconds - last[0]!.seconds) / 3;
  const [first, second, third] = steps as [number, number, number];
  const ratio = (second + third) / (first + second);
  const [early, late] = [second / first, third / second];
  const even = gaps.every((one) => Math.abs(one - gap) < 0.2 * gap);
  const alike = early > 0 && late > 0 && early / late < agreement && late / early < agreement;
  if (!even || !alike || ratio > mostRatio) return unforetold;
  const cubed = ratio ** 3;
  const left = Math.abs(((first + second + third) * cubed) / (1 - cubed));
  return {
    steps: Math.max(doubt.leastSteps, left),
    tauSeconds: -gap / Math.log(ratio),
    roughSteps: doubt.roughSteps + doubt.roughShare * left,
    roughTauSeconds: doubt.roughTauSeconds,
  };
}
