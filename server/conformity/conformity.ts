import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { type Message, message } from "../../calibration/message.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { occurrences, type WorthTable } from "../metals/worth-table.ts";
import { causeOf, needsFiner, satisfies, whyLeft } from "./alternative.ts";
import { type Candidate, candidate, distinct, fitOf, madeCandidate } from "./candidate.ts";
import { type ClaimRisk, claimRisk } from "./claim-risk.ts";
import { type ConsistentAfter, consistentAfter } from "./consistent-after.ts";
import { type Decision, type DecisionRule, decide } from "./decision-rule.ts";
import type { Evidence } from "./evidence/evidence.ts";
import { excludedBy } from "./evidence/exclusion-by-test.ts";
import { type WeighedEvidence, weighEvidence } from "./evidence/weighed-evidence.ts";
import { bandAt, distanceTo } from "./exclusion.ts";
import { type Instrument, type NextTest, nextTests } from "./next-test.ts";
import { type Separation, separation } from "./separation.ts";
import { leftBeside, type State } from "./state.ts";
import { madeUpBeside, metalsNotExcluded } from "./what-fits.ts";
import { canLookLike } from "./worth.ts";

/** A candidate that is left, with how well it fits beside the claim. */
export interface NotExcluded extends Candidate {
  /**
   * fit of the candidate over that of the claim; over the best fit where the claim is none or excluded. 1 for a body
   * tuned to this density.
   */
  likelihoodRatio: number;
  /** why it is left beside the claim, and what would tell it from it; none for the claim itself, nor as published */
  beside?: { why: Message; separatedBy: Separation | null };
}

/** What density and other tests say about a claim, and everything they leave. */
export interface Conformity {
  claimed: Metal | undefined;
  state: State;
  /** the claim first where it is left, then by occurrence, of one occurrence by likelihood ratio */
  notExcluded: NotExcluded[];
  /** what the other tests excluded, what contradicts, what is odd */
  evidence: WeighedEvidence;
  /** the harmless tests to make next, in order; none when nothing is left to tell apart, or the claim is excluded */
  nextTests: NextTest[];
  /** half-width of the interval that would decide, g/cm³, where a finer density would */
  neededHalfWidthGPerCm3?: number;
  /** beside a claim that does not stand alone: what would let it, or what stays beside it */
  consistentAfter?: ConsistentAfter;
  /** what the rule leaves undone over many pieces offered as the claim; as published only where one was agreed */
  risk?: ClaimRisk;
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
  /** instruments at hand beside the balance; all when left out */
  owned?: readonly Instrument[] | undefined;
  /** works out no more than `compute` publishes */
  asPublished?: boolean | undefined;
}

/**
 * Holds a measured density and other tests against a claim. Throws Refusal for an unknown claim. Solid tungsten and a
 * tungsten core stay beside fine gold whatever the numbers.
 */
export function conformityFor(measured: MeasuredDensity, context: ConformityContext): Conformity {
  const { library, celsius, evidence = [] } = context;
  const claimed = context.claim === undefined ? undefined : library.metal(context.claim);
  const { fits, left, weighed } = leftBy(measured, claimed, context);
  const own = left.filter(({ metal }) => metal === claimed);
  const beside = own.length > 0 ? claimed : undefined;
  const others = distinct(
    left.filter(({ metal }) => !claimed || !satisfies(metal, claimed)),
    library,
  );
  const against = beside ? fitOf(measured, beside, celsius) : bestFit(others, measured, celsius);
  const weigh = (one: Candidate): NotExcluded => ({
    ...one,
    likelihoodRatio: one.tuned || !(against > 0) ? 1 : fitOf(measured, one.metal, celsius) / against,
    ...(one.metal !== claimed &&
      !context.asPublished && {
        beside: {
          why: whyLeft(one, beside),
          separatedBy: beside ? besideDensity(one, beside) : null,
        },
      }),
  });
  const alternatives = ordered(others.map(weigh));
  const finer = beside ? alternatives.filter((one) => needsFiner(one, beside, library.worth)) : [];
  const state = stateOf({
    claimed,
    exclusions: (fits ? 0 : 1) + exclusionsOf(claimed, evidence, library.worth),
    contradicts: weighed.contradictions.length > 0,
    finer: finer.length > 0,
    alternatives,
    evidence,
  });
  return {
    claimed,
    state,
    notExcluded: [...own.map(weigh), ...alternatives],
    evidence: weighed,
    nextTests:
      claimed && !beside
        ? []
        : nextTests(
            alternatives.map(({ metal }) => metal),
            claimed,
            { done: evidence.map(({ kind }) => kind), ...(context.owned && { owned: context.owned }) },
          ),
    ...(state === "inconclusive" && beside && finer.length > 0
      ? { neededHalfWidthGPerCm3: neededHalfWidth(measured, beside, finer, celsius) }
      : {}),
    ...(claimed &&
      state === "consistent-not-unique" && {
        consistentAfter: consistentAfter(claimed, alternatives, evidence, library.worth),
      }),
    ...(claimed && underRule(measured, claimed, context)),
  };
}

/** What density and the other tests leave, and whether the density fits the claim. */
function leftBy(
  measured: MeasuredDensity,
  claimed: Metal | undefined,
  { library, confidence, celsius, evidence = [] }: ConformityContext,
): { fits: boolean; left: Candidate[]; weighed: WeighedEvidence } {
  const fitting = metalsNotExcluded(measured, confidence, celsius, library);
  const fits = claimed !== undefined && fitting.includes(claimed);
  // beside a claim that the density excludes, nothing is put together to pass for it
  const made = fits ? madeUpBeside(measured, claimed, celsius, library).map(madeCandidate) : [];
  // beside a claim only what can look like it passes for it
  const passing = fits ? fitting.filter((m) => looksLike(m, claimed, { fitting, library })) : fitting;
  const bodies = [...passing.map((m) => candidate(m, passing)), ...made];
  const fittingOnes = new Set(fitting);
  const weighed = weighEvidence(
    {
      fits: bodies.map(({ metal }) => metal),
      others: library.metals.filter((m) => !fittingOnes.has(m)),
      claimed,
    },
    evidence,
    library.worth,
  );
  const pull = fits && pullWithoutSteel(fitting, evidence);
  const left = new Set(weighed.notExcluded);
  return {
    fits,
    left: bodies.filter(({ metal }) => left.has(metal)),
    weighed: pull ? { ...weighed, contradictions: [...weighed.contradictions, pull] } : weighed,
  };
}

/** The decision on the claim's band under the rule that was agreed, and the risks of it or of "not excluded". */
function underRule(
  measured: MeasuredDensity,
  claimed: Metal,
  { library, celsius, rule, asPublished }: ConformityContext,
): Pick<Conformity, "risk" | "decision"> {
  if (asPublished && !rule) return {};
  const band = bandAt(claimed, celsius);
  const decision = rule && decide(measured, { low: band.low, high: band.high }, rule);
  const [from, to] = measured.intervalGPerCm3;
  const expanded = (to - from) / 2;
  const acceptance = decision?.acceptance ?? { low: band.low - expanded, high: band.high + expanded };
  const risk = claimRisk(claimed, library, { u: measured.uGPerCm3, celsius, acceptance });
  return { risk, ...(decision && { decision }) };
}

/**
 * A strong pull where no sound metal of this density is pulled. A steel pin, spring or clasp pulls as well, so that the
 * magnet alone does not exclude a claim that the density fits.
 */
function pullWithoutSteel(fitting: readonly Metal[], evidence: readonly Evidence[]): Message | undefined {
  const pulled = evidence.some((one) => one.kind === "magnet" && one.shows === "strong");
  return pulled && fitting.every(({ magnetism }) => magnetism !== "strong")
    ? message("test.check.pull-without-steel")
    : undefined;
}

/** The harmless test that separates; none where a finer density would and nothing but a laboratory beside it. */
function besideDensity(one: Candidate, claimed: Metal): Separation | null {
  const found = separation(claimed, one.metal);
  return found.test === "laboratory" && causeOf(one, claimed) === "uncertainty" ? null : found;
}

/** A family passes for the claim only by a recipe of it that the density leaves. */
function looksLike(
  metal: Metal,
  claimed: Metal,
  { fitting, library }: { fitting: readonly Metal[]; library: Library },
): boolean {
  const recipes = metal.recipes ? fitting.filter(({ id }) => metal.recipes?.includes(id)) : [];
  return (recipes.length > 0 ? recipes : [metal]).some((one) => canLookLike(one, claimed, library.worth));
}

const exclusionsOf = (claimed: Metal | undefined, evidence: readonly Evidence[], worth: WorthTable) =>
  claimed ? evidence.filter((e) => excludedBy(e, claimed, worth) !== null).length : 0;

const bestFit = (of: readonly Candidate[], measured: MeasuredDensity, celsius: number) =>
  Math.max(0, ...of.filter(({ tuned }) => !tuned).map(({ metal }) => fitOf(measured, metal, celsius)));

function stateOf({
  claimed,
  exclusions,
  contradicts,
  finer,
  alternatives,
  evidence,
}: {
  claimed: Metal | undefined;
  /** how many tests exclude the claim, the density among them */
  exclusions: number;
  contradicts: boolean;
  /** a finer density would exclude an alternative that matters */
  finer: boolean;
  alternatives: readonly NotExcluded[];
  evidence: readonly Evidence[];
}): State {
  if (!claimed) return "no-claim";
  // one test against all others may itself be at fault; two that exclude the claim are not
  if (contradicts && exclusions < 2) return "inconclusive";
  if (exclusions > 0) return "excluded";
  if (finer) return "inconclusive";
  const kinds = evidence.map(({ kind }) => kind);
  return leftBeside(claimed, alternatives, kinds).length > 0 ? "consistent-not-unique" : "consistent";
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
