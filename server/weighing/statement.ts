import type { DensityResult } from "../../calibration/density-result.ts";
import { type CurvePoint, densityCurve, measuredDensity } from "../../calibration/distribution.ts";
import { measure } from "../../calibration/measure.ts";
import { seededRandom } from "../../calibration/random.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import { measurementOf } from "../compute/measurement-of.ts";
import { cautionsAbout } from "../conformity/cautions.ts";
import { type Conformity, conformityFor } from "../conformity/conformity.ts";
import type { Decision } from "../conformity/decision-rule.ts";
import type { Evidence } from "../conformity/evidence/evidence.ts";
import { outlineCheck } from "../conformity/evidence/outline-and-displacement.ts";
import { type Instrument, instruments } from "../conformity/next-test.ts";
import { highOf, lowOf } from "../conformity/tolerance.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { answerOf } from "./answer.ts";
import { impossible } from "./checks/check.ts";
import { checksOf } from "./checks/index.ts";
import type { Situation } from "./checks/situation.ts";
import { conformityMessage } from "./conformity-message.ts";
import { noReading, withoutVerdict } from "./no-verdict.ts";
import { poolOfClaim } from "./pool-check.ts";
import { repeatsShare } from "./repeats-share.ts";
import { situationOfRequest } from "./request-situation.ts";
import { saidOfSetIn } from "./set-in.ts";
import { numbersOf } from "./stated-density.ts";
import { finenessOf, resultsOf, unlikeResults } from "./stated-fineness.ts";
import type {
  NoReading,
  StatedCheck,
  StatedDecision,
  StatedDensity,
  StatedMeaning,
  Statement,
} from "./statement-shape.ts";
import { coarseCheck } from "./too-coarse.ts";
import { wouldDecide } from "./would-decide.ts";

/** A statement with what a page draws beside it; nothing where there is no density. */
export type Made =
  | { statement: Statement; drawn: { curve(): readonly CurvePoint[]; displacedGrams: number } }
  | { statement: NoReading; drawn: null };

/** What is known beyond the request. */
export interface StatementContext {
  library: Library;
  /** tests made beside the weighing */
  evidence?: readonly Evidence[];
  /** what the bench saw of the weighing beside its readings; without it the request alone says how it was weighed */
  situation?: Situation | undefined;
  /** stops that a person can answer are asked where the record is written, and take no verdict here */
  asksPerson?: boolean | undefined;
  /** instruments at hand for a next test; when left out, those usually met beside such a balance */
  owned?: readonly Instrument[] | undefined;
  /** works out no more than \`compute\` publishes */
  asPublished?: boolean | undefined;
}

/** The same request gives the same digits, whenever and wherever it is computed. */
const fixedSeed = 31415927;

/**
 * The statement of one weighing. Throws Refusal, with the key of the request it is about, when the request asks for what
 * cannot be. Readings that cannot be true are no refusal: a stop check stands then, and there is no verdict.
 */
export function statementFor(request: ComputeRequest, context: StatementContext): Made {
  const { library } = context;
  refuseWhatNeedsAnother(request);
  // the density of an alloy in a stone is not that of its claim
  const { claim } = request.set_in ? {} : request;
  const claimed = claim === undefined ? undefined : library.metal(claim);
  const situation = context.situation ?? situationOfRequest({ ...request, claim }, library);
  const result = measured(request, claimed?.expansionPerMillionK ?? undefined, situation);
  if ("checks" in result) return { statement: noReading(request, result.checks, library), drawn: null };
  const checks: StatedCheck[] = [
    ...(situation ? checksOf(withDensity(situation, result)) : []),
    ...result.warnings.map((warning) => ({
      ...(claimed && warning.code === "measurement.pool"
        ? poolOfClaim(warning, result, { claimed, oddGPerCm3: request.odd_density_g_cm3, library })
        : warning),
      remedies: [],
    })),
  ].filter(({ code }) => applies(code, request));
  // no body gives such readings: what follows from them is the density of nothing
  if (!context.asksPerson && checks.some(({ code, severity }) => severity === "stop" && impossible.has(code)))
    return { statement: noReading(request, checks, library), drawn: null };
  const numbers = numbersOf(result);
  const said = request.set_in
    ? saidOfSetIn(request, { setIn: request.set_in, numbers, checks, library })
    : saidOfClaim(request, { result, numbers, checks, claimed }, context);
  return {
    statement: { id: request.id, ...numbers, ...said, versions: { library: library.version } },
    drawn: { curve: () => densityCurve(result), displacedGrams: result.displacedGrams },
  };
}

/** Keys of a request that say nothing without another. */
function refuseWhatNeedsAnother({
  claim,
  decision_rule,
  laboratory_results,
  set_in,
  evidence,
}: ComputeRequest) {
  if (claim === undefined) {
    if (decision_rule) throw new Refusal("compute.rule-without-claim", {}, "decision_rule");
    if (laboratory_results) throw new Refusal("compute.results-without-claim", {}, "laboratory_results");
    if (set_in) throw new Refusal("compute.set-in-without-claim", {}, "set_in");
  }
  if (!set_in) return;
  for (const [key, given] of Object.entries({ decision_rule, laboratory_results, evidence }))
    if (given) throw new Refusal("compute.set-in-beside", { key }, key);
}

interface Weighed {
  result: DensityResult;
  numbers: StatedDensity;
  checks: readonly StatedCheck[];
  claimed: Metal | undefined;
}

/** What a density says of a piece and its claim, with the checks of it beside those of the weighing. */
function saidOfClaim(
  request: ComputeRequest,
  { result, numbers, checks: ofWeighing, claimed }: Weighed,
  { library, evidence = [], owned, asksPerson, asPublished }: StatementContext,
): Omit<StatedMeaning, "id" | "versions"> {
  const conformity = conformityFor(measuredDensity(result), {
    library,
    confidence: request.confidence,
    celsius: result.liquidCelsius,
    claim: request.claim,
    evidence,
    rule: request.decision_rule,
    owned: owned ?? usuallyOwned(request),
    asPublished,
  });
  const coarse = coarseCheck(numbers, request);
  const checks = [...ofWeighing, ...coarse, ...testChecks(conformity, evidence, numbers)];
  const stop = checks.some(
    ({ code, severity }) => severity === "stop" && !(asksPerson && !impossible.has(code)),
  );
  const meaning = stop
    ? withoutVerdict(request)
    : meaningOf(conformity, result, numbers, { request, library, coarse: coarse.length > 0 });
  checks.push(...unlikeResults(meaning.fineness, claimed));
  return {
    checks,
    ...meaning,
    answer: answerOf({ conformity: meaning.conformity, checks }, stop ? undefined : conformity, library),
  };
}

/** Refusals that say that the readings are not those of a density; all others are about a value of the request. */
const cannotBeTrue = /^measurement\.(nothing-displaced\.|dry-not-above-zero$)/;
/** A refusal of the size of the displaced mass, which may come of readings that a check stops. */
const tooLittle = "measurement.displaced-within-uncertainty";

/** The measurement; or, where none follows from the readings, the checks that stop it. Throws Refusal. */
function measured(
  request: ComputeRequest,
  expansionPerMillionK: number | undefined,
  situation: Situation | undefined,
): DensityResult | { checks: StatedCheck[] } {
  const expansion = expansionPerMillionK === undefined ? undefined : expansionPerMillionK * 1e-6;
  try {
    return measure(measurementOf(request, expansion), seededRandom(fixedSeed));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, params } = error;
    const checks = (situation ? checksOf(situation) : []).filter((one) => applies(one.code, request));
    const stopped = checks.some(({ severity }) => severity === "stop");
    if (stopped && (cannotBeTrue.test(code) || code === tooLittle)) return { checks };
    if (!cannotBeTrue.test(code)) throw error;
    return { checks: [{ code, severity: "stop", params, remedies: [] }, ...checks] };
  }
}

/** Checks that take the dry readings for the piece alone say nothing where known bodies or the hanger lie with it. */
const ofPieceAlone: ReadonlySet<string> = new Set([
  "check.boxes-swapped",
  "check.displaced-for-immersed",
  "check.rests-on-bottom",
  "check.floats",
  "check.not-covered",
  "check.hanger-in-dry",
  "check.hanger-in-immersed",
  "check.lower-than-claim",
  "check.higher-than-claim",
]);

/** Checks that take the piece for a solid metal say nothing where it is set in something lighter. */
const ofSolidMetal: ReadonlySet<string> = new Set(["check.rests-on-bottom", "check.displaced-for-immersed"]);

function applies(code: string, { added, hanger, liquid, set_in }: ComputeRequest): boolean {
  if (set_in && ofSolidMetal.has(code)) return false;
  const alone = !added?.length && hanger?.in_air === undefined && liquid?.kind !== "measured";
  return alone || !ofPieceAlone.has(code);
}

function withDensity(situation: Situation, result: DensityResult): Situation {
  return {
    ...situation,
    density: { valueGPerCm3: result.gPerCm3, expandedGPerCm3: result.expandedGPerCm3 },
    repeatsShare: repeatsShare(result.budget),
  };
}

/** A conductivity meter and a sound gauge are met beside a balance of 1 mg and finer (common practice). */
const usuallyOwned = ({ balance }: ComputeRequest) => (balance.readability_g <= 0.001 ? instruments : []);

/** What the other tests say of each other and of the weighing, as checks that warn. */
function testChecks(
  { evidence: { contradictions, remarks } }: Conformity,
  evidence: readonly Evidence[],
  { volume_cm3, u_volume_cm3 }: StatedDensity,
): StatedCheck[] {
  const displaced = { cm3: volume_cm3, uCm3: u_volume_cm3 };
  const outlines = evidence.flatMap((one) =>
    one.kind === "outline"
      ? (outlineCheck({ cm3: one.outlineCm3, uCm3: one.uOutlineCm3 }, displaced) ?? [])
      : [],
  );
  return [...contradictions, ...remarks, ...outlines].map(({ code, params = {} }) => ({
    code,
    severity: "warn",
    params,
    remedies: [],
  }));
}

function meaningOf(
  conformity: Conformity,
  result: DensityResult,
  numbers: StatedDensity,
  { request, library, coarse }: { request: ComputeRequest; library: Library; coarse: boolean },
) {
  const { claimed, state, notExcluded, evidence, nextTests, decision, neededHalfWidthGPerCm3 } = conformity;
  const { consistentAfter, risk } = conformity;
  const { confidence } = request;
  const standing = claimed && coarse && state !== "excluded" ? "inconclusive" : state;
  const ways =
    neededHalfWidthGPerCm3 === undefined ? [] : wouldDecide(numbers, neededHalfWidthGPerCm3, request);
  const { neededHalfWidthGPerCm3: _, ...wide } = conformity;
  const found = coarse ? { ...wide, state: standing } : conformity;
  const message = conformityMessage(found, numbers, { celsius: result.liquidCelsius, confidence, ways });
  return {
    conformity: {
      claim: claimed?.id ?? null,
      state: standing,
      ...(message && { says: message }),
      ...(decision && { decision: statedDecision(decision) }),
      ...(consistentAfter && standing === state && { consistent_after: consistentAfter.tests }),
      ...(risk && {
        global_risk: {
          consumers: risk.consumers,
          producers: risk.producers,
          beyond_density: risk.beyondDensity,
        },
      }),
      ...(neededHalfWidthGPerCm3 === undefined ? {} : { needed_half_width_g_cm3: neededHalfWidthGPerCm3 }),
    },
    not_excluded: notExcluded.map(({ metal, kind, occurrence, likelihoodRatio, beside }) => ({
      id: metal.id,
      kind,
      occurrence,
      likelihood_ratio: likelihoodRatio,
      ...(beside && { why: beside.why }),
      ...(beside?.separatedBy && { separated_by: beside.separatedBy }),
    })),
    excluded_by_tests: evidence.excluded,
    fineness:
      state === "excluded" || !claimed
        ? null
        : finenessOf(claimed, result, { confidence, library, results: resultsOf(request) }),
    cautions: cautionsAbout(notExcluded.map(({ metal }) => metal)),
    next_tests: nextTests,
  };
}

function statedDecision({ rule, limits, acceptance, ...decision }: Decision): StatedDecision {
  return {
    rule: { ...rule },
    limits_g_cm3: [lowOf(limits), highOf(limits)],
    acceptance_g_cm3: acceptance === "empty" ? null : [lowOf(acceptance), highOf(acceptance)],
    verdict: decision.verdict,
    conformance_probability: decision.conformanceProbability,
    specific_risk: decision.specificRisk,
    worst_acceptance_risk: decision.worstAcceptanceRisk,
  };
}
