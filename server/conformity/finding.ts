import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { builtIn } from "../metals/library.ts";
import type { DensityBand, Metal } from "../metals/metal.ts";
import { type Decision, decide } from "./decision-rule.ts";
import { bandAt, bandCelsius, distanceTo } from "./exclusion.ts";
import type { FindingContext } from "./finding-context.ts";
import * as words from "./finding-words.ts";
import { type LookAlike, lookAlike, madeUp, needsFiner, satisfies } from "./look-alike.ts";
import { type NextTest, nextTest } from "./next-test.ts";
import { whyTooHigh, whyTooLow } from "./procedure-suspicions.ts";
import type { State } from "./state.ts";
import { madeUpBeside, metalsAlive } from "./what-fits.ts";

/** What a density says about a claim, and everything it leaves alive. */
export interface Finding {
  claim?: string;
  state: State;
  /** the reason in one or two plain sentences */
  because: string;
  /** ids of every library metal that the measurement does not exclude, likeliest first; the claim is among them if alive */
  alive: string[];
  /**
   * what else than the claim fits: those of `alive`, and pieces made of two that are worth making; each with why it is
   * alive and what would separate it
   */
  lookAlikes: LookAlike[];
  /** procedure faults to rule out first, when the claim is excluded */
  suspicions: readonly string[];
  /** how much finer the measurement must be to decide, when it does not */
  wouldDecide?: string;
  /** the harmless test to make next, or the laboratory; null when nothing is left to separate */
  nextTest: NextTest | null;
  /** the claim's band as limits under the decision rule agreed before measuring; absent without claim or rule */
  conformity?: Decision;
  confidence: number;
  /** version of the library the finding was made with */
  libraryVersion: string;
}

/**
 * The finding for a measured density under a claim, at a confidence such as 0.9545. Without a claim the state is
 * "no-claim" and `alive` says what the density leaves. Solid tungsten and a tungsten core stay alive beside fine gold
 * whatever the numbers: their bands differ by less than handbooks disagree about gold.
 * Throws RangeError for an unknown claim (the message lists near ids) or a confidence outside (0, 1).
 */
export function findingFor(
  measured: MeasuredDensity,
  claim: string | undefined,
  confidence: number,
  context: FindingContext = {},
): Finding {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`Confidence ${confidence}: right is a fraction between 0 and 1, such as 0.9545.`);
  const library = context.library ?? builtIn;
  const claimed = claim === undefined ? undefined : library.metal(claim);
  const celsius = context.celsius ?? bandCelsius;
  const alive = metalsAlive(measured, confidence, celsius, library);
  const base = { confidence, libraryVersion: library.version, alive: alive.map((m) => m.id) };
  if (!claimed)
    return {
      ...base,
      state: "no-claim",
      because: words.noClaim(alive),
      lookAlikes: alive.map((m) => lookAlike(m, undefined)),
      suspicions: [],
      nextTest: nextTest(alive, undefined),
    };

  const others = alive.filter((m) => !satisfies(m, claimed));
  const madeUps = madeUpBeside(measured, claimed, celsius, library);
  const found = {
    ...base,
    claim: claimed.id,
    lookAlikes: [
      ...others.map((m) => lookAlike(m, claimed)),
      ...madeUps.map((standIn) => madeUp(standIn, claimed)),
    ],
    nextTest: nextTest([...others, ...madeUps.map((s) => s.as)], claimed),
    ...(context.rule && { conformity: decide(measured, limits(bandAt(claimed, celsius)), context.rule) }),
  };
  const { lookAlikes } = found;
  if (!alive.includes(claimed)) {
    const low = measured.valueGPerCm3 < bandAt(claimed, celsius).low;
    return {
      ...found,
      state: "excluded",
      because: words.disagrees(measured, claimed, celsius, confidence, others),
      suspicions: low ? whyTooLow : whyTooHigh,
    };
  }
  const decidable = lookAlikes.filter(needsFiner);
  if (decidable.length > 0) {
    const needed = Math.min(
      ...decidable.map((l) => neededHalfWidth(measured, claimed, library.metal(l.id), celsius)),
    );
    return {
      ...found,
      state: "inconclusive",
      because: words.undecided(measured, claimed, decidable),
      suspicions: [],
      wouldDecide: words.wouldDecide(measured, needed, context),
    };
  }
  const alone = lookAlikes.length === 0;
  return {
    ...found,
    state: alone ? "consistent" : "consistent-not-unique",
    because: alone ? words.agrees(claimed, confidence) : words.notAlone(claimed, lookAlikes, confidence),
    suspicions: [],
  };
}

const limits = ({ low, high }: DensityBand) => ({ low, high });

/** Half-width that would leave only one of the two: the value must be further than this from one of the bands. */
function neededHalfWidth(measured: MeasuredDensity, claimed: Metal, other: Metal, celsius: number): number {
  const from = (m: Metal) => distanceTo(bandAt(m, celsius), measured.valueGPerCm3);
  return Math.max(from(claimed), from(other));
}
