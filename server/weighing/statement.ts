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
import { answerOf } from "./answer.ts";
import { impossible } from "./checks/check.ts";
import { checksOf } from "./checks/index.ts";
import type { Situation } from "./checks/situation.ts";
import { conformityMessage } from "./conformity-message.ts";
import { noNumbers } from "./no-numbers.ts";
import { poolOfClaim } from "./pool-check.ts";
import { repeatsShare } from "./repeats-share.ts";
import { situationOfRequest } from "./request-situation.ts";
import { finenessOf, resultsOf, unlikeResults } from "./stated-fineness.ts";
import type { NoReading, StatedCheck, StatedDecision, StatedDensity, Statement } from "./statement-shape.ts";
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
  const { library, evidence = [] } = context;
  if (request.decision_rule && request.claim === undefined)
    throw new Refusal("compute.rule-without-claim", {}, "decision_rule");
  if (request.laboratory_results && request.claim === undefined)
    throw new Refusal("compute.results-without-claim", {}, "laboratory_results");
  const claimed = request.claim === undefined ? undefined : library.metal(request.claim);
  const situation = context.situation ?? situationOfRequest(request, library);
  const result = measured(request, claimed?.expansionPerMillionK ?? undefined, situation);
  if ("checks" in result) return { statement: noReading(request, result.checks, library), drawn: null };
  const density = measuredDensity(result);
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
  const conformity = conformityFor(density, {
    library,
    confidence: request.confidence,
    celsius: result.liquidCelsius,
    claim: request.claim,
    evidence,
    rule: request.decision_rule,
    owned: context.owned ?? usuallyOwned(request),
    asPublished: context.asPublished,
  });
  const numbers = numbersOf(result);
  const coarse = coarseCheck(numbers, request);
  checks.push(...coarse, ...testChecks(conformity, evidence, numbers));
  const stop = checks.some(
    ({ code, severity }) => severity === "stop" && !(context.asksPerson && !impossible.has(code)),
  );
  const meaning = stop
    ? withoutVerdict(request)
    : meaningOf(conformity, result, numbers, { request, library, coarse: coarse.length > 0 });
  checks.push(...unlikeResults(meaning.fineness, claimed));
  const statement = {
    id: request.id,
    ...numbers,
    checks,
    ...meaning,
    versions: { library: library.version },
  };
  return {
    statement: { ...statement, answer: answerOf(statement, stop ? undefined : conformity, library) },
    drawn: { curve: () => densityCurve(result), displacedGrams: result.displacedGrams },
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

function applies(code: string, { added, hanger, liquid }: ComputeRequest): boolean {
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

function numbersOf(result: DensityResult): StatedDensity {
  return {
    density_g_cm3: result.gPerCm3,
    u_g_cm3: result.uGPerCm3,
    dof: Number.isFinite(result.dof) ? result.dof : null,
    k: result.k,
    expanded_g_cm3: result.expandedGPerCm3,
    interval_g_cm3: [...result.intervalGPerCm3],
    interval_from: result.intervalFrom,
    density_20_g_cm3: result.gPerCm3At20,
    relative_density: { d20_4: result.relativeDensity.d20over4, apparent: result.relativeDensity.apparent },
    mass_g: result.massGrams,
    u_mass_g: result.uMassGrams,
    volume_cm3: result.volumeCm3,
    u_volume_cm3: result.uVolumeCm3,
    liquid_density_g_cm3: result.liquidGPerCm3,
    air_density_kg_m3: result.airKgPerM3,
    budget: result.budget.map(({ input, unit, value, u, sensitivity, contributionGPerCm3, share }) => ({
      input,
      unit,
      value,
      u,
      sensitivity,
      contribution_g_cm3: contributionGPerCm3,
      share,
    })),
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
  const says = conformityMessage(found, numbers, { celsius: result.liquidCelsius, confidence, ways });
  return {
    conformity: {
      claim: claimed?.id ?? null,
      state: standing,
      ...(says && { says }),
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

function withoutVerdict({ claim }: ComputeRequest) {
  return {
    conformity: { claim: claim ?? null, state: "no-valid-reading" as const },
    not_excluded: [],
    excluded_by_tests: [],
    fineness: null,
    cautions: [],
    next_tests: [],
  };
}

function noReading(request: ComputeRequest, checks: StatedCheck[], library: Library): NoReading {
  const statement = {
    id: request.id,
    ...noNumbers,
    checks,
    ...withoutVerdict(request),
    versions: { library: library.version },
  };
  return { ...statement, answer: answerOf(statement, undefined, library) };
}
