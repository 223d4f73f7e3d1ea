import type { CheckKind, CheckResult } from "./check.ts";
import { type Assumed, currentNumber, currentScatter, type ProfileNumber } from "./current-number.ts";
import type { EccentricityFound } from "./eccentricity.ts";
import type { LinearityFound } from "./linearity.ts";
import { type ThermometerPoint, thermometerPoints } from "./thermometer-points.ts";

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
  /** standard uncertainty of the scale, relative */
  span?: ProfileNumber;
  /** where the thermometer was compared, coldest first */
  thermometer?: readonly ThermometerPoint[];
  /** the same for the sensors that were checked, by their address */
  sensors?: Readonly<Record<string, readonly ThermometerPoint[]>>;
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

/** So long what a check weight found of the scale holds, days. Common practice. */
const checkWeightDays = 31;

/** For a balance without its own test: two thirds of the last place, twice that immersed. Common practice. */
export const assumedRepeatabilityPerReadability = 2 / 3;
export const assumedImmersedPerDry = 2;

const day = 86_400_000;

/** The checks that hold at a time, oldest first. */
export function holding<Result extends CheckResult>(results: readonly Result[], at: string): Result[] {
  const holds = ({ at: made, kind }: Result) =>
    made <= at && Date.parse(made) + (validDays[kind] ?? checkWeightDays) * day >= Date.parse(at);
  return results.filter(holds).sort((a, b) => a.at.localeCompare(b.at));
}

/**
 * The profile a set of check results makes, at a given time. The passed ones count: repeatability tests that still
 * hold are pooled, of the others the latest is taken. A failed test enters where its number is worse than that, until
 * one passes: a balance found to scatter more widens budgets at once, and only a passed check narrows them again. A
 * failed thermometer is not corrected by its failed check. What was never checked is assumed, and the origin says so.
 */
export function balanceProfile(of: {
  balance: string;
  readabilityGrams: number;
  results: readonly CheckResult[];
  at: string;
  by: string;
}): BalanceProfile {
  const { balance, readabilityGrams, at, by } = of;
  const results = holding(of.results, at);
  const latest = (kind: CheckKind) => results.findLast((result) => result.kind === kind);
  const assumedNumber = (value: number, assumed: Assumed): ProfileNumber => ({
    value,
    dof: null,
    origin: { assumed },
  });
  const dry = currentScatter(
    results,
    "repeatability",
    assumedNumber(assumedRepeatabilityPerReadability * readabilityGrams, "from-readability"),
  );
  const wet = currentScatter(
    results,
    "immersed-repeatability",
    assumedNumber(assumedImmersedPerDry * dry.value, "from-dry"),
  );
  const line = latest("linearity");
  const corner = latest("eccentricity");
  const thermometer = latest("thermometer") ?? latest("ice-point");
  const points = thermometerPoints(results);
  const eccentric = currentNumber<EccentricityFound>(
    results,
    "eccentricity",
    assumedNumber(0, "none"),
    ({ uPerGram }) => uPerGram,
  );
  const span = spanOf(results);
  const current = [
    latest("repeatability"),
    latest("immersed-repeatability"),
    line,
    corner,
    thermometer,
  ].filter((result) => result !== undefined);
  const ends = current.map(({ at: made, kind }) => Date.parse(made) + validDays[kind]! * day);
  return {
    balance,
    madeAt: at,
    madeBy: by,
    validUntil: new Date(Math.min(...ends, Date.parse(at) + 365 * day)).toISOString(),
    readabilityGrams,
    repeatability: dry,
    immersedRepeatability: wet,
    linearity: currentNumber<LinearityFound>(
      results,
      "linearity",
      assumedNumber(0, "none"),
      ({ linearityGrams }) => linearityGrams,
    ),
    ...("check" in eccentric.origin && { eccentricityPerGram: eccentric }),
    ...(span && { span }),
    ...(points.length > 0 && { thermometer: points }),
  };
}

/** The scale as loads over the range tell it, or else the newest check weight. Earlier checks told nothing of it. */
function spanOf(results: readonly CheckResult[]): ProfileNumber | undefined {
  const telling = results.filter(({ found }) => (found as Partial<{ spanU: number }>).spanU !== undefined);
  return (["linearity", "check-weight"] as const)
    .map((kind) =>
      currentNumber<{ spanU: number }>(
        telling,
        kind,
        { value: 0, dof: null, origin: { assumed: "none" } },
        ({ spanU }) => spanU,
      ),
    )
    .find(({ origin }) => "check" in origin);
}
