import { withoutZeroDrift } from "../../../calibration/zero-drift.ts";
import { displacedInOrder, hangs, type Situation, scatterGrams, zeroMoved } from "./situation.ts";

/** Of a run of bubbles that leave or grow, no step is more than this share; what is, is one reading that stands out. */
const mostOfOneStep = 0.9;

/**
 * How the displaced mass ran over three or more immersions. Common practice: after re-immersion the density creeps up
 * and levels off as bubbles leave, so the run of the repeats is the bubble detector, not their mean.
 * A run counts when it goes one way by more than 3·√2 of a reading's scatter and never turns back by more than one;
 * it has levelled when the last two agree within √2 of the scatter. What the zero ran as well is no run.
 */
export function climb(situation: Situation): {
  /** g the displaced mass fell from first to last; positive means the density climbed */
  fellGrams: number;
  runs: "up" | "down" | "neither";
  levelled: boolean;
  /** places of the immersions taken before it levelled */
  early: number[];
} {
  const moved = zeroMoved(situation) * (hangs(situation) ? -1 : 1);
  const displaced = withoutZeroDrift(displacedInOrder(situation), moved);
  const scatter = scatterGrams(situation, "wet");
  const fellGrams = displaced.length < 3 ? 0 : displaced[0]! - displaced.at(-1)!;
  const steps = displaced.slice(1).map((after, place) => displaced[place]! - after);
  const oneWay = steps.every((step) => step * Math.sign(fellGrams) > -scatter);
  const far = Math.abs(fellGrams) > 3 * Math.SQRT2 * scatter;
  // one step that makes the whole run is one reading that stands out
  const largest = Math.max(0, ...steps.map(Math.abs));
  const agree = Math.SQRT2 * scatter * 1.000001; // steps of a coarse display are whole multiples of d
  const last = displaced.at(-1) ?? 0;
  const early = [...displaced.keys()].filter((place) => Math.abs(displaced[place]! - last) > agree);
  return {
    fellGrams,
    runs:
      far && oneWay && largest <= mostOfOneStep * Math.abs(fellGrams)
        ? fellGrams > 0
          ? "up"
          : "down"
        : "neither",
    levelled: Math.abs(steps.at(-1) ?? Number.POSITIVE_INFINITY) <= agree,
    early,
  };
}
