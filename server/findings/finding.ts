import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { builtIn, type Library } from "../alloys/library.ts";
import type { DensityBand, Metal } from "../alloys/metal.ts";
import { type StandIn, standIns } from "../composites/stand-ins.ts";
import { type Decision, type DecisionRule, decide } from "./decision-rule.ts";
import { bandAt, bandCelsius, distanceTo, excludes } from "./exclusion.ts";
import * as words from "./finding-words.ts";
import { type LookAlike, lookAlike, madeUp, satisfies } from "./look-alike.ts";
import { type NextTest, nextTest } from "./next-test.ts";
import { whyTooHigh, whyTooLow } from "./procedure-suspicions.ts";

export type FindingState = "agrees" | "agrees-not-alone" | "disagrees" | "undecided";

/** What a density says about a claim, and everything it leaves alive. */
export interface Finding {
  claim?: string;
  state: FindingState;
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

/** What is known of the measurement beyond its density; each makes the finding's words more concrete. */
export interface FindingContext {
  /** temperature of the liquid, °C: bands are brought to it. 20 when absent. */
  celsius?: number;
  massG?: number;
  readabilityG?: number;
  pieces?: number;
  /** rule agreed before measuring, for the verdict on the claim's band */
  rule?: DecisionRule;
  /** with own metals; the built-in library when absent */
  library?: Library;
}

const likelihoodOrder = { common: 0, possible: 1, rare: 2 } as const;
const fineGold = new Set(["el-au", "au-24", "au-999", "au-995"]);
const tungsten = new Set(["el-w", "w-pure", "w-core-au"]);

/**
 * The finding for a measured density under a claim, at a confidence such as 0.9545. Without a claim the state is
 * "undecided" and `alive` says what the density leaves. Solid tungsten and a tungsten core stay alive beside fine gold
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
      state: "undecided",
      because: words.noClaim(alive),
      lookAlikes: alive.map((m) => lookAlike(m, undefined)),
      suspicions: [],
      nextTest: nextTest(alive, undefined),
    };

  const others = alive.filter((m) => !satisfies(m, claimed));
  const madeUps = madeUpBeside(measured, claimed, celsius);
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
      state: "disagrees",
      because: words.disagrees(measured, claimed, celsius, confidence, others),
      suspicions: low ? whyTooLow : whyTooHigh,
    };
  }
  const decidable = lookAlikes.filter(
    (l) => l.why === "uncertainty" && l.worthMaking && l.likelihood !== "rare",
  );
  if (decidable.length > 0) {
    const needed = Math.min(
      ...decidable.map((l) => neededHalfWidth(measured, claimed, library.metal(l.id), celsius)),
    );
    return {
      ...found,
      state: "undecided",
      because: words.undecided(measured, claimed, decidable),
      suspicions: [],
      wouldDecide: words.wouldDecide(measured, needed, context),
    };
  }
  const alone = lookAlikes.length === 0;
  return {
    ...found,
    state: alone ? "agrees" : "agrees-not-alone",
    because: alone ? words.agrees(claimed, confidence) : words.notAlone(claimed, lookAlikes, confidence),
    suspicions: [],
  };
}

const limits = ({ low, high }: DensityBand) => ({ low, high });

function metalsAlive(
  measured: MeasuredDensity,
  confidence: number,
  celsius: number,
  { metals }: Library,
): Metal[] {
  const fits = new Set(metals.filter((m) => !excludes(measured, bandAt(m, celsius), confidence)));
  const goldAlive = [...fits].some((m) => fineGold.has(m.id));
  if (goldAlive) for (const m of metals) if (tungsten.has(m.id)) fits.add(m);
  const order = (m: Metal) => likelihoodOrder[m.likelihood];
  const away = (m: Metal) => Math.abs(m.densityGPerCm3.nominal - measured.valueGPerCm3);
  return [...fits].sort((a, b) => order(a) - order(b) || away(a) - away(b));
}

/** Pieces of two that fit the interval; it is brought to 20 °C by the claim's expansion. */
function madeUpBeside(measured: MeasuredDensity, claimed: Metal, celsius: number): StandIn[] {
  const shrunk = claimed.densityGPerCm3.nominal / bandAt(claimed, celsius).nominal;
  const [low, high] = measured.intervalGPerCm3;
  return standIns([low * shrunk, high * shrunk], claimed);
}

/** Half-width that would leave only one of the two: the value must be further than this from one of the bands. */
function neededHalfWidth(measured: MeasuredDensity, claimed: Metal, other: Metal, celsius: number): number {
  const from = (m: Metal) => distanceTo(bandAt(m, celsius), measured.valueGPerCm3);
  return Math.max(from(claimed), from(other));
}
