import { roundedPair } from "../../calibration/rounding.ts";
import type { BudgetLine, ReportResult } from "./report.ts";
import type { Response } from "./stated.ts";

/** The results with their uncertainty, rounded once, together (calibration/rounding.ts). */
export function resultsOf(response: Response, liquidCelsius: number | null): ReportResult[] {
  const at = liquidCelsius === null ? "at the temperature of the liquid" : `at ${liquidCelsius} °C`;
  const results: ReportResult[] = [];
  const expanded = `U, expanded, k = ${response.k.toFixed(2)}`;
  results.push(
    stated(`Density of the piece ${at}`, response.density_g_cm3, response.expanded_g_cm3, "g/cm³", expanded),
  );
  if (typeof response.density_20_g_cm3 === "number")
    results.push(
      stated("Density at 20 °C", response.density_20_g_cm3, response.expanded_g_cm3, "g/cm³", expanded),
    );
  const standard = "u, standard uncertainty";
  results.push(stated("Mass", response.mass_g, response.u_mass_g, "g", standard));
  if (response.volume_cm3 !== undefined)
    results.push(stated("Volume", response.volume_cm3, response.u_volume_cm3, "cm³", standard));
  const relative = response.relative_density as { d20_4?: number; apparent?: number } | undefined;
  const places = roundedOr(response.density_g_cm3, response.expanded_g_cm3).decimals;
  if (relative?.d20_4 !== undefined)
    results.push({
      quantity: "Relative density d 20/4",
      value: relative.d20_4.toFixed(places),
      unit: "1",
      uncertainty: null,
    });
  if (relative?.apparent !== undefined)
    results.push({
      quantity: "Apparent relative density (dry reading / displaced mass, uncorrected)",
      value: relative.apparent.toFixed(places),
      unit: "1",
      uncertainty: null,
    });
  return results;
}

/** How the interval came about, in the words of JCGM 100:2008 and JCGM 101:2008. */
export function uncertaintyStatement(response: Response, confidence: number): string {
  const percent = `${+(confidence * 100).toFixed(2)} %`;
  const { decimals } = roundedOr(response.density_g_cm3, response.expanded_g_cm3);
  const [low, high] = response.interval_g_cm3.map((end) => end.toFixed(decimals));
  const interval = `The true density lies between ${low} and ${high} g/cm³ with a coverage probability of ${percent}`;
  const budget =
    "What contributes to it stands under “Budget of the density”; values are rounded in this report only, the uncertainty to two significant digits.";
  if (response.interval_from === "monte-carlo")
    return `${interval}, by propagation of distributions (Monte Carlo, JCGM 101:2008), because the law of propagation of uncertainty was not validated for this measurement. ${budget}`;
  const dof =
    typeof response.dof === "number"
      ? `${Math.floor(response.dof)} effective degrees of freedom`
      : "very many degrees of freedom";
  return `${interval}: the standard uncertainty multiplied by k = ${response.k.toFixed(2)}, from Student's t for ${dof} (JCGM 100:2008, confirmed by Monte Carlo). ${budget}`;
}

/** The budget with the largest share first, inputs that contribute nothing left out; u and contribution to two significant digits. */
export function budgetOf(response: Response): BudgetLine[] {
  return (response.budget ?? [])
    .filter((line) => line.contribution_g_cm3 !== 0)
    .sort((a, b) => Math.abs(b.share) - Math.abs(a.share))
    .map((line) => {
      const pair = roundedOr(line.value, line.u);
      return {
        input: line.input,
        value: pair.value,
        unit: line.unit,
        u: pair.u,
        sensitivity: significant(line.sensitivity, 4),
        contribution: significant(line.contribution_g_cm3, 2),
        share: line.share,
      };
    });
}

function stated(
  quantity: string,
  value: number,
  u: number | undefined,
  unit: string,
  kind: string,
): ReportResult {
  const pair = roundedOr(value, u ?? 0);
  const uncertainty = u !== undefined && u > 0 ? `${pair.u} ${unit} (${kind})` : null;
  return { quantity, value: pair.value, unit, uncertainty };
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
export function shareShown(share: number): string {
  return share > 0 && share < 0.0005 ? "< 0.1 %" : `${(share * 100).toFixed(1)} %`;
}
