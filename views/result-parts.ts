import type { CurvePoint } from "../calibration/distribution.ts";
import { inputName, unitName } from "./budget-input.ts";
import type { Locale } from "./messages/language.ts";
import { metalTold } from "./messages/tell.ts";
import { inLocale } from "./numbers.ts";
import type { Band } from "./plots/bands.tsx";
import type { BudgetInput } from "./plots/budget.tsx";
import type { MeasuredCurve } from "./plots/density-plot.ts";

/** The band of a metal, g/cm³ at 20 °C, and whether people bring pieces said to be it. */
export interface MetalBand {
  id: string;
  name: string;
  low: number;
  high: number;
  claimable: boolean;
}

/** A statement as far as its numbers are drawn, in g and g/cm³. */
export interface DrawnStatement {
  density_g_cm3: number;
  u_g_cm3: number;
  expanded_g_cm3: number;
  interval_g_cm3: readonly [number, number];
  mass_g: number;
  not_excluded: readonly { id: string }[];
  excluded_by_tests?: readonly { id: string }[] | undefined;
}

/** One line of its budget; the input is a code with its values. */
export interface BudgetRow {
  input: string;
  unit: string;
  value: number;
  u: number;
  contribution_g_cm3: number;
  share: number;
}

/** The measured distribution as the density axis draws it. */
export function measuredOf(
  statement: DrawnStatement,
  curve: readonly CurvePoint[],
  confidence: number,
): MeasuredCurve {
  return {
    value: statement.density_g_cm3,
    u: statement.u_g_cm3,
    interval: statement.interval_g_cm3,
    confidence,
    curve: curve.map(({ gPerCm3, probabilityDensity }) => ({ gPerCm3, height: probabilityDensity })),
  };
}

/** A few percent about the value, and all of a wide interval: what lies there is a neighbour. */
function neighbourhood(statement: DrawnStatement): readonly [number, number] {
  const reach = Math.max(0.07 * statement.density_g_cm3, 2 * statement.expanded_g_cm3);
  return [Math.max(0, statement.density_g_cm3 - reach), statement.density_g_cm3 + reach];
}

/**
 * Bands worth drawing: the claim, all that is not excluded in the statement's order, and the neighbours that density or
 * a test ruled out. A recipe whose family stands for it, or what cannot look like the claim, is neither.
 */
export function bandsAround(
  bands: readonly MetalBand[],
  claim: string | undefined,
  statement: DrawnStatement,
  locale: Locale = "en",
): Band[] {
  const left = new Map(statement.not_excluded.map(({ id }, place) => [id, place]));
  const order = ({ id }: MetalBand) => left.get(id) ?? left.size;
  const [from, to] = neighbourhood(statement);
  const [least, most] = statement.interval_g_cm3;
  const byTest = new Set(statement.excluded_by_tests?.map(({ id }) => id));
  const ruledOut = ({ id, low, high }: MetalBand) =>
    low < to && high > from && (byTest.has(id) || high < least || low > most);
  return bands
    .filter((band) => band.id === claim || left.has(band.id) || ruledOut(band))
    .sort((a, b) => order(a) - order(b))
    .map((band) => ({ ...band, name: metalTold(band, locale), notExcluded: left.has(band.id) }));
}

/** One input of the budget with its units written out. */
export function budgetInput(row: BudgetRow, locale: Locale = "en"): BudgetInput {
  return {
    input: inputName(row.input, locale),
    value: `${inLocale(`${Number(row.value.toPrecision(8))}`, locale)} ${unitName(row.unit, locale)}`,
    u: `${inLocale(row.u.toPrecision(2), locale)} ${unitName(row.unit, locale)}`,
    contribution: row.contribution_g_cm3,
    share: row.share,
  };
}

/** The page of two bodies with what was measured of the whole: a stone in its setting, gold in quartz. */
export function twoBodiesHref(
  statement: Pick<DrawnStatement, "mass_g" | "density_g_cm3" | "u_g_cm3">,
  claim?: string,
): string {
  return `/plan/two-bodies?${new URLSearchParams({
    question: "rest",
    massG: `${Number(statement.mass_g.toPrecision(8))}`,
    density: `${Number(statement.density_g_cm3.toPrecision(6))}`,
    uDensity: `${Number(statement.u_g_cm3.toPrecision(2))}`,
    ...(claim === undefined ? {} : { alloy: claim }),
  })}`;
}
