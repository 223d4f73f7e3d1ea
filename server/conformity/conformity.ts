import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import type { Library } from "../metals/library.ts";
import type { DensityBand, Metal } from "../metals/metal.ts";
import {
  type Candidate,
  candidate,
  distinct,
  fitOf,
  madeCandidate,
  type Occurrence,
  occurrences,
} from "./candidate.ts";
import { type Decision, type DecisionRule, decide } from "./decision-rule.ts";
import type { Evidence } from "./evidence/evidence.ts";
import { type WeighedEvidence, weighEvidence } from "./evidence/weighed-evidence.ts";
import { bandAt, distanceTo } from "./exclusion.ts";
import { lookAlike, needsFiner, satisfies } from "./look-alike.ts";
import { type NextTest, nextTest } from "./next-test.ts";
import type { State } from "./state.ts";
import { madeUpBeside, metalsAlive } from "./what-fits.ts";

/** A candidate that is left, with how well it fits beside the claim. */
export interface NotExcluded extends Candidate {
  /**
   * fit of the candidate over that of the claim; over the best fit where the claim is none or excluded. 1 for a body
   * tuned to this density.
   */
  likelihoodRatio: number;
}

/** What density and other tests say about a claim, and everything they leave. */
export interface Conformity {
  claimed: Metal | undefined;
  state: State;
  /** the claim first where it is left, then by occurrence, of one occurrence by likelihood ratio */
  notExcluded: NotExcluded[];
  /** what the other tests excluded, what contradicts, what is odd, and the test to make next */
  evidence: WeighedEvidence;
  /** the harmless test to make next, or the laboratory; null when nothing is left to separate */
  nextTest: NextTest | null;
  /** half-width of the interval that would decide, g/cm³, where a finer density would */
  neededHalfWidthGPerCm3?: number;
  /** the claim's band as limits under the rule agreed before measuring */
  decision?: Decision;
}

/** What a claim is held against. */
export interface ConformityContext {
  library: Library;
  confidence: number;
  /** temperature of the piece, °C: bands are brought to it */
  celsius: number;
  claim?: string | undefined;
  evidence?: readonly Evidence[];
  rule?: DecisionRule | undefined;
}

/**
 * Holds a measured density and other tests against a claim. Throws Refusal for an unknown claim. Solid tungsten and a
 * tungsten core stay beside fine gold whatever the numbers.
 */
export function conformityFor(measured: MeasuredDensity, context: ConformityContext): Conformity {
  const { library, confidence, celsius, evidence = [], rule } = context;
  const claimed = context.claim === undefined ? undefined : library.metal(context.claim);
  const fitting = metalsAlive(measured, confidence, celsius, library);
  const bodies = [
    ...fitting.map(candidate),
    ...(claimed ? madeUpBeside(measured, claimed, celsius, library).map(madeCandidate) : []),
  ];
  const others = library.metals.filter((m) => !fitting.includes(m));
  const weighed = weighEvidence(
    bodies.map(({ metal }) => metal),
    others,
    evidence,
    claimed,
  );
  const left = bodies.filter(({ metal }) => weighed.alive.includes(metal));
  const alternatives = distinct(
    left.filter(({ metal }) => claimed === undefined || !satisfies(metal, claimed)),
    library,
  );
  const own = left.filter(({ metal }) => metal === claimed);
  const decidable =
    claimed &&
    own.length > 0 &&
    alternatives.filter(({ metal, occurrence }) => isDecidable(metal, claimed, occurrence));
  const state = stateFrom({ claimed, own, alternatives, decidable: decidable || [], weighed, evidence });
  return {
    claimed,
    state,
    notExcluded: [
      ...ratios(own, own, measured, celsius),
      ...ordered(ratios(alternatives, own, measured, celsius)),
    ],
    evidence: weighed,
    nextTest: nextTest(
      alternatives.map(({ metal }) => metal),
      claimed,
      new Set(evidence.map(({ kind }) => kind)),
    ),
    ...(state === "inconclusive" && claimed && decidable && decidable.length > 0
      ? { neededHalfWidthGPerCm3: neededHalfWidth(measured, claimed, decidable, celsius) }
      : {}),
    ...(rule && claimed && { decision: decide(measured, limits(bandAt(claimed, celsius)), rule) }),
  };
}

const limits = ({ low, high }: DensityBand) => ({ low, high });

const isDecidable = (metal: Metal, claimed: Metal, occurrence: Occurrence) =>
  occurrence !== "purpose-made" && needsFiner(lookAlike(metal, claimed));

/** Harmless tests that can exclude a body tuned to a density. */
const seeingThrough: ReadonlySet<Evidence["kind"]> = new Set(["magnet", "conductivity", "sound"]);

function stateFrom({
  claimed,
  own,
  alternatives,
  decidable,
  weighed,
  evidence,
}: {
  claimed: Metal | undefined;
  own: readonly Candidate[];
  alternatives: readonly Candidate[];
  decidable: readonly Candidate[];
  weighed: WeighedEvidence;
  evidence: readonly Evidence[];
}): State {
  if (!claimed) return "no-claim";
  if (evidence.length > 0 && weighed.contradictions.length > 0) return "inconclusive";
  if (own.length === 0) return "excluded";
  if (decidable.length > 0) return "inconclusive";
  const tested = evidence.some(({ kind }) => seeingThrough.has(kind));
  const counts: readonly Occurrence[] = tested
    ? ["common", "occasional"]
    : ["common", "occasional", "purpose-made"];
  return alternatives.some(({ occurrence }) => counts.includes(occurrence))
    ? "consistent-not-unique"
    : "consistent";
}

function ratios(
  of: readonly Candidate[],
  own: readonly Candidate[],
  measured: MeasuredDensity,
  celsius: number,
): NotExcluded[] {
  const fits = of.map(({ metal, tuned }) => (tuned ? Number.NaN : fitOf(measured, metal, celsius)));
  const [claimed] = own;
  const against = claimed
    ? fitOf(measured, claimed.metal, celsius)
    : Math.max(...fits.filter((one) => !Number.isNaN(one)));
  return of.map((one, place) => ({
    ...one,
    likelihoodRatio: one.tuned ? 1 : against > 0 ? fits[place]! / against : 0,
  }));
}

function ordered(candidates: readonly NotExcluded[]): NotExcluded[] {
  const rank = ({ occurrence }: NotExcluded) => occurrences.indexOf(occurrence);
  return [...candidates].sort((a, b) => rank(a) - rank(b) || b.likelihoodRatio - a.likelihoodRatio);
}

/** Half-width that leaves only one of the two: the value must be further than this from one of the bands. */
function neededHalfWidth(
  measured: MeasuredDensity,
  claimed: Metal,
  others: readonly Candidate[],
  celsius: number,
): number {
  const from = (m: Metal) => distanceTo(bandAt(m, celsius), measured.valueGPerCm3);
  return Math.min(...others.map(({ metal }) => Math.max(from(claimed), from(metal))));
}
