import type { Load } from "./balance.ts";
import type { DensityResult } from "./density-result.ts";
import { apart } from "./displacement.ts";
import type { StatedLiquid } from "./liquid.ts";
import type { Measurement } from "./measurement.ts";
import type { MeasurementCheck } from "./measurement-check.ts";
import type { Code, Params } from "./message.ts";
import { oddByDefault, wouldHide } from "./pool.ts";
import { ownScatterFrom } from "./repeats.ts";
import { coarsestPlaceGrams, readingTexts } from "./series.ts";

const warning = (code: Code, params: Params = {}): MeasurementCheck => ({ code, severity: "warn", params });

type Judged = Omit<DensityResult, "warnings">;

/** What a careful colleague would say beside the result, as codes with values. */
export function warningsFor(
  measurement: Measurement,
  loads: readonly Load[],
  result: Judged,
  secondOrder: number | undefined,
): MeasurementCheck[] {
  return [
    ...fromIntervals(result, secondOrder),
    ...fromReadings(measurement, loads),
    ...fromLiquid(measurement),
    ...(measurement.weighing.notes ?? []),
    ...fromBalances(measurement),
    ...fromPool(measurement, result),
  ];
}

function fromIntervals(result: Judged, secondOrder: number | undefined): MeasurementCheck[] {
  const said: MeasurementCheck[] = [];
  const mc = result.monteCarlo;
  if (mc && !mc.validatesGum) {
    const skew = (mc.intervalGPerCm3[1] - result.gPerCm3) / (result.gPerCm3 - mc.intervalGPerCm3[0]);
    said.push(warning("measurement.not-gum", { skewed: Math.abs(skew - 1) > 0.05 ? "yes" : "no" }));
  }
  if (mc && !mc.settled) said.push(warning("measurement.not-settled", { trials: mc.trials }));
  if (secondOrder !== undefined && Math.abs(secondOrder / result.uGPerCm3 - 1) > 0.05)
    said.push(warning("measurement.second-order", { from_g_cm3: result.uGPerCm3, to_g_cm3: secondOrder }));
  return said;
}

function fromReadings(measurement: Measurement, loads: readonly Load[]): MeasurementCheck[] {
  const said: MeasurementCheck[] = [];
  const { balance, weighing } = measurement;
  const wet = balance.immersedReadabilityGrams ?? balance.readabilityGrams;
  for (const [series, d] of [
    [measurement.dry, balance.readabilityGrams] as const,
    ...weighing.series.map((s) => [s, wet] as const),
  ]) {
    const coarsest = coarsestPlaceGrams(series);
    if (coarsest > 1.5 * d)
      said.push(
        warning("measurement.coarse-digits", {
          reading: { decimal: readingTexts(series)[0] ?? "" },
          unit: series.unit,
          step_g: coarsest,
          stated_g: d,
        }),
      );
  }
  for (const l of loads)
    if (l.each.length >= ownScatterFrom && l.scatter.u === 0)
      said.push(
        warning("measurement.no-scatter-shown", {
          count: l.each.length,
          load: l.scatter.name.replace(/, repeatability.*/, ""),
        }),
      );
  return said;
}

function fromLiquid({ liquid }: Measurement): MeasurementCheck[] {
  const said: MeasurementCheck[] = [];
  if (
    liquid.kind === "water" &&
    (liquid.purity === "tap" || liquid.purity === "boiled") &&
    liquid.dissolvedSolidsMgPerL === undefined
  )
    said.push(warning("measurement.tap-water"));
  if (liquid.kind === "stated") said.push(...statedAt(liquid));
  else if (liquid.kind !== "water" && liquid.temperature === undefined)
    said.push(warning("measurement.no-liquid-temperature"));
  return said;
}

/** A stated density holds at one temperature: a few degrees away an organic liquid is off by half a percent. */
function statedAt({
  name,
  temperature,
  statedAtCelsius,
  expansionPerCelsius,
}: StatedLiquid): MeasurementCheck[] {
  if (temperature === undefined || statedAtCelsius === undefined)
    return [warning("measurement.liquid-stated-at", { case: "missing", name, celsius: 0, stated_at_c: 0 })];
  const away = Math.abs(temperature.celsius - statedAtCelsius);
  if (expansionPerCelsius !== undefined || away < 0.1) return [];
  const params = { case: "expansion", name, celsius: temperature.celsius, stated_at_c: statedAtCelsius };
  return [warning("measurement.liquid-stated-at", params)];
}

function fromBalances({ balance, immersedBalance }: Measurement): MeasurementCheck[] {
  if (!immersedBalance || (balance.spanU !== undefined && immersedBalance.spanU !== undefined)) return [];
  return [warning("measurement.two-balances", { percent: 100 * apart })];
}

function fromPool({ pieces, oddGPerCm3 }: Measurement, result: Judged): MeasurementCheck[] {
  if (pieces === 1) return [];
  const odd = oddGPerCm3 ?? oddByDefault * result.gPerCm3;
  const hidden = wouldHide(result, pieces, odd);
  return [warning("measurement.pool", { pieces, hidden, odd_g_cm3: odd, claimed: "no", kinds: [] })];
}
