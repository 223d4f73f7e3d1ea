import { roundedPair } from "../../calibration/rounding.ts";
import { isTooCoarse } from "../../calibration/too-coarse.ts";
import { inputName, unitName } from "../../views/budget-input.ts";
import { fromTo } from "../../views/numbers.ts";
import type { BudgetLine, Report, ReportResult } from "../../views/reports/report.ts";
import type { RecordedStatement } from "../weighing/recorded-statement.ts";
import type { Writing } from "./writing.ts";

/**
 * The results with their uncertainty, rounded once, together (calibration/rounding.ts). Of a density too coarse to tell
 * anything only the ends of its interval, and no quotient made of it.
 */
export function resultsOf(
  statement: RecordedStatement,
  liquidCelsius: number | null,
  { t, number, locale }: Writing,
): ReportResult[] {
  const quantity =
    statement.liquid_density_g_cm3 === null
      ? t("report.results.at-piece")
      : liquidCelsius === null
        ? t("report.results.at-liquid")
        : t("report.results.at", { celsius: number(celsiusText(statement, liquidCelsius)) });
  const results: ReportResult[] = [];
  const k = number(statement.k.toFixed(2));
  const add = (quantity: string, value: number, expanded: number | undefined, unit: string, factor: string) =>
    results.push(stated({ quantity, value, expanded, unit, factor }, number));
  const tooCoarse = isTooCoarse(statement.density_g_cm3, statement.expanded_g_cm3);
  if (tooCoarse) {
    const [low, high] = statement.interval_g_cm3;
    const value = fromTo(Math.max(0, low), high, locale);
    results.push({ quantity, value, unit: "g/cm³", uncertainty: t("report.results.too-coarse") });
  } else {
    add(quantity, statement.density_g_cm3, statement.expanded_g_cm3, "g/cm³", k);
    if (typeof statement.density_20_g_cm3 === "number")
      add(t("report.results.at20"), statement.density_20_g_cm3, statement.expanded_g_cm3, "g/cm³", k);
  }
  add(t("report.results.mass"), statement.mass_g, twice(statement.u_mass_g), "g", number("2.00"));
  if (statement.volume_cm3 !== undefined)
    add(
      t("report.results.volume"),
      statement.volume_cm3,
      twice(statement.u_volume_cm3),
      "cm³",
      number("2.00"),
    );
  if (tooCoarse) return results;
  const relative = statement.relative_density;
  const places = roundedOr(statement.density_g_cm3, statement.expanded_g_cm3).decimals;
  const quotient = (quantity: string, value: number | undefined) => {
    if (value !== undefined)
      results.push({ quantity, value: number(value.toFixed(places)), unit: "1", uncertainty: null });
  };
  if (relative)
    add(
      t("report.results.relative"),
      relative.d20_4,
      (statement.expanded_g_cm3 * relative.d20_4) / statement.density_g_cm3,
      "1",
      k,
    );
  if (statement.liquid_density_g_cm3 !== null) quotient(t("report.results.apparent"), relative?.apparent);
  return results;
}

/** How the interval came about, in the words of JCGM 100:2008 and JCGM 101:2008. */
export function uncertaintyStatement(
  statement: RecordedStatement,
  confidence: number,
  { t, number }: Writing,
): string {
  const { decimals } = roundedOr(statement.density_g_cm3, statement.expanded_g_cm3);
  const [low = "", high = ""] = statement.interval_g_cm3.map((end) => number(end.toFixed(decimals)));
  const interval = t("report.uncertainty.interval", {
    low,
    high,
    percent: `${number(`${+(confidence * 100).toFixed(2)}`)} %`,
  });
  if (statement.interval_from === "monte-carlo")
    return `${interval}, ${t("report.uncertainty.by-monte-carlo")} ${t("report.uncertainty.budget")}`;
  const degrees =
    typeof statement.dof === "number" && statement.dof < 1e6
      ? t("report.uncertainty.degrees", { count: Math.floor(statement.dof) })
      : t("report.uncertainty.many-degrees");
  return `${interval}: ${t("report.uncertainty.by-propagation", { k: number(statement.k.toFixed(2)), degrees })} ${t("report.uncertainty.budget")}`;
}

/** Inputs below this share of the variance are told together: their shares would be printed as "<0.1 %" each. */
const smallestShare = 0.0005;

/**
 * The budget with the largest share first, inputs that contribute nothing left out and negligible ones in one line; u and
 * contribution to two significant digits.
 */
export function budgetOf(statement: RecordedStatement, writing: Writing): BudgetLine[] {
  const { number, locale, t } = writing;
  const lines = (statement.budget ?? [])
    .filter((line) => line.contribution_g_cm3 !== 0)
    .sort((a, b) => Math.abs(b.share) - Math.abs(a.share));
  const small = lines.filter(({ share }) => Math.abs(share) < smallestShare);
  const together: BudgetLine[] =
    small.length < 2
      ? []
      : [
          {
            input: t("report.budget.together", { count: small.length }),
            value: "–",
            unit: "–",
            u: "–",
            sensitivity: "–",
            contribution: number(significant(Math.hypot(...small.map((one) => one.contribution_g_cm3)), 2)),
            share: number(shareShown(small.reduce((sum, { share }) => sum + share, 0))),
          },
        ];
  const each = together.length === 0 ? lines : lines.filter((line) => !small.includes(line));
  return [
    ...each.map((line) => {
      const pair = roundedOr(line.value, line.u);
      return {
        input: inputName(line.input, locale),
        value: number(pair.value),
        unit: unitName(line.unit, locale),
        u: number(pair.u),
        sensitivity: number(significant(line.sensitivity, 4)),
        contribution: number(significant(line.contribution_g_cm3, 2)),
        share: number(shareShown(line.share)),
      };
    }),
    ...together,
  ];
}

/** Of a mass and a volume only u is kept; k = 2 is 95.45 % of a normal distribution (JCGM 100:2008, G.6.6). */
const twice = (u: number | undefined) => (u === undefined ? undefined : 2 * u);

interface Quantity {
  quantity: string;
  value: number;
  expanded: number | undefined;
  unit: string;
  factor: string;
}

function stated(
  { quantity, value, expanded = 0, unit, factor }: Quantity,
  number: Writing["number"],
): ReportResult {
  const pair = roundedOr(value, expanded);
  if (!(expanded > 0)) return { quantity, value: number(pair.value), unit, uncertainty: null };
  return { quantity, value: `${number(pair.value)} ± ${number(pair.u)}`, unit, uncertainty: factor };
}

/** The temperature of the liquid as its own uncertainty lets it be told; to a hundredth where none is known. */
export function celsiusText(statement: RecordedStatement, celsius: number): string {
  const u = statement.budget?.find(({ unit, value }) => unit === "°C" && value === celsius)?.u ?? 0;
  return `${Number(u > 0 ? roundedPair(celsius, u).value : celsius.toFixed(2))}`;
}

/** What stands in the first lines: the answer, the density with its U, and at which temperature and k. */
export function headlineOf(
  statement: RecordedStatement,
  { answer, confidence, celsius }: { answer: string; confidence: number; celsius: number | null },
  writing: Writing,
): Report["headline"] {
  const { t, number } = writing;
  const [density] = resultsOf(statement, celsius, writing);
  const percent = `${number(`${+(confidence * 100).toFixed(2)}`)} %`;
  const k = number(statement.k.toFixed(2));
  return {
    answer,
    density: density?.value ?? "",
    of:
      celsius === null
        ? t("report.headline.of", { k, percent })
        : t("report.headline.of-at", { celsius: number(celsiusText(statement, celsius)), k, percent }),
  };
}

function roundedOr(value: number, u: number): { value: string; u: string; decimals: number } {
  if (u > 0) return roundedPair(value, u);
  return { value: significant(value, 6), u: "0", decimals: 4 };
}

/** So many significant digits, plain decimal while that is short, else with a power of ten. */
function significant(value: number, digits: number): string {
  if (value === 0) return "0";
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  return exponent < -5 || exponent > 6
    ? value
        .toExponential(digits - 1)
        .replace(/e([+-]?)(\d+)$/, (_, sign: string, power: string) => ` × 10${raised(sign, power)}`)
    : Number(value.toPrecision(digits)).toFixed(Math.max(0, digits - 1 - exponent));
}

/** A power of ten in superior figures. */
function raised(sign: string, power: string): string {
  const figures = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  return `${sign === "-" ? "⁻" : ""}${[...power].map((digit) => figures[Number(digit)]).join("")}`;
}

/** A share of the variance in per cent; one too small to show is not shown as none. */
function shareShown(share: number): string {
  return share > 0 && share < 0.0005 ? "< 0.1 %" : `${(share * 100).toFixed(1)} %`;
}
