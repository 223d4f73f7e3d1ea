import type { CheckKind, CheckResult, Dof } from "./check.ts";
import type { EccentricityFound } from "./eccentricity.ts";
import type { LinearityFound } from "./linearity.ts";
import type { RepeatabilityFound } from "./repeatability.ts";
import type { ThermometerFound } from "./thermometer.ts";

/** Where a number of the profile comes from: a check with its date, or an assumption that says so. */
export type Origin = { check: CheckKind; at: string; by: string; says: string } | { assumed: string };

export interface ProfileNumber {
  value: number;
  dof: Dof;
  origin: Origin;
}

/** What is known of a balance (and the bench's thermometer), each number with its origin. Plain data for the ledger. */
export interface BalanceProfile {
  balance: string;
  madeAt: string;
  madeBy: string;
  /** ISO 8601: the first of its checks to run out */
  validUntil: string;
  readabilityGrams: number;
  /** standard deviation of one dry reading, g */
  repeatability: ProfileNumber;
  /** standard deviation of one immersed reading, g */
  immersedRepeatability: ProfileNumber;
  /** rectangular half-width, g */
  linearity: ProfileNumber;
  /** standard uncertainty per gram of a load not centred */
  eccentricityPerGram?: ProfileNumber;
  /** correction to add to the thermometer, °C, and the standard uncertainty of a corrected reading */
  thermometer?: { correctionCelsius: number; uCelsius: ProfileNumber; atCelsius: number };
  /** failed checks that stand, in words; a profile with any is not fit for use */
  failed: string[];
  /** checks never made, in words */
  missing: string[];
}

/** How long a check holds, in days. Common practice: yearly, after a move or a knock; the thermometer comparison monthly. */
export const validDays: Partial<Record<CheckKind, number>> = {
  repeatability: 365,
  "immersed-repeatability": 365,
  linearity: 365,
  eccentricity: 365,
  "ice-point": 365,
  thermometer: 31,
};

/** For a balance without its own test: two thirds of the last place, twice that immersed. Common practice. */
export const assumedRepeatabilityPerReadability = 2 / 3;
export const assumedImmersedPerDry = 2;

const day = 86_400_000;

/**
 * The profile a set of check results makes, at a given time. Of each kind the latest result counts, failed or not
 * (a failed one is named in `failed` and its number still enters, since it is the true one); passed repeatability
 * tests that still hold are pooled. What was never checked is assumed, and the origin says so.
 */
export function balanceProfile(of: {
  balance: string;
  readabilityGrams: number;
  results: readonly CheckResult[];
  at: string;
  by: string;
}): BalanceProfile {
  const { balance, readabilityGrams, at, by } = of;
  const holds = (result: CheckResult) =>
    result.at <= at && Date.parse(result.at) + (validDays[result.kind] ?? 0) * day >= Date.parse(at);
  const results = of.results.filter(holds).sort((a, b) => a.at.localeCompare(b.at));
  const latest = <Found>(kind: CheckKind) =>
    results.findLast((result) => result.kind === kind) as CheckResult<Found> | undefined;
  const scatter = (kind: CheckKind, assumedGrams: number, assumed: string): ProfileNumber => {
    const last = latest<RepeatabilityFound>(kind);
    if (last === undefined) return { value: assumedGrams, dof: null, origin: { assumed } };
    const passed = results.filter((result) => result.kind === kind && result.passed) as (typeof last)[];
    return { ...pooled(last.passed ? passed : [last]), origin: originOf(last) };
  };
  const dry = scatter(
    "repeatability",
    assumedRepeatabilityPerReadability * readabilityGrams,
    "two thirds of the readability, until a repeatability test is made",
  );
  const wet = scatter(
    "immersed-repeatability",
    assumedImmersedPerDry * dry.value,
    "twice the dry repeatability, until a test with re-immersion is made",
  );
  const line = latest<LinearityFound>("linearity");
  const corner = latest<EccentricityFound>("eccentricity");
  const ice = latest<ThermometerFound>("ice-point");
  const beside = latest<ThermometerFound>("thermometer");
  const thermometer = beside ?? ice;
  const inForce = [
    latest("repeatability"),
    latest("immersed-repeatability"),
    line,
    corner,
    thermometer,
  ].filter((result) => result !== undefined);
  const ends = inForce.map(({ at: made, kind }) => Date.parse(made) + validDays[kind]! * day);
  return {
    balance,
    madeAt: at,
    madeBy: by,
    validUntil: new Date(Math.min(...ends, Date.parse(at) + 365 * day)).toISOString(),
    readabilityGrams,
    repeatability: dry,
    immersedRepeatability: wet,
    linearity:
      line === undefined
        ? { value: 0, dof: null, origin: { assumed: "none, until a linearity test is made" } }
        : { value: line.found.linearityGrams, dof: null, origin: originOf(line) },
    ...(corner && {
      eccentricityPerGram: { value: corner.found.uPerGram, dof: null, origin: originOf(corner) },
    }),
    ...(thermometer && {
      thermometer: {
        correctionCelsius: thermometer.found.correctionCelsius,
        atCelsius: thermometer.found.atCelsius,
        uCelsius: {
          value: thermometer.found.uCelsius,
          dof: thermometer.found.dof,
          origin: originOf(thermometer),
        },
      },
    }),
    failed: inForce.filter(({ passed }) => !passed).map(({ says, todo }) => `${says} ${todo}`),
    missing: [
      latest("repeatability") ?? "repeatability, dry",
      latest("immersed-repeatability") ?? "repeatability, immersed",
      line ?? "linearity",
      corner ?? "eccentricity",
      thermometer ?? "thermometer",
    ].filter((one) => typeof one === "string"),
  };
}

const originOf = ({ kind, at, by, says }: CheckResult): Origin => ({ check: kind, at, by, says });

/** Pooled standard deviation √(Σν s²/Σν), never below what the display hides, with the sum of the dof. */
function pooled(results: readonly CheckResult<RepeatabilityFound>[]): { value: number; dof: number } {
  const dof = results.reduce((sum, { found }) => sum + found.dof, 0);
  const variance =
    results.reduce((sum, { found }) => sum + found.dof * found.repeatabilityGrams ** 2, 0) / dof;
  return { value: Math.sqrt(variance), dof };
}
