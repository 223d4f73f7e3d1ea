import type { Load } from "./balance.ts";
import { lastPlace } from "./decimal.ts";
import type { DensityResult } from "./density-result.ts";
import type { Measurement } from "./measurement.ts";
import { oddByDefault, wouldHide } from "./pool.ts";
import { ownScatterFrom } from "./repeats.ts";
import { readingTexts } from "./series.ts";
import { gramsPerUnit } from "./units.ts";

type Judged = Omit<DensityResult, "warnings">;

/** What a careful colleague would say beside the result, in plain sentences. */
export function warningsFor(
  measurement: Measurement,
  loads: readonly Load[],
  result: Judged,
  secondOrder: number | undefined,
): string[] {
  return [
    ...fromIntervals(result, secondOrder),
    ...fromReadings(measurement, loads),
    ...fromLiquid(measurement),
    ...fromPool(measurement, result),
  ];
}

function fromIntervals(result: Judged, secondOrder: number | undefined): string[] {
  const said: string[] = [];
  const mc = result.monteCarlo;
  if (mc && !mc.validatesGum) {
    const skew = (mc.intervalGPerCm3[1] - result.gPerCm3) / (result.gPerCm3 - mc.intervalGPerCm3[0]);
    said.push(
      `The GUM interval is not validated by Monte Carlo (JCGM 101 clause 8), so the Monte Carlo interval is quoted: ${
        Math.abs(skew - 1) > 0.05
          ? "the uncertainty of the displaced mass is a large part of it, which makes the distribution lopsided."
          : "the distribution is not Gaussian, because display steps or few readings rule it."
      }`,
    );
  }
  if (mc && !mc.settled)
    said.push(`The Monte Carlo interval had not settled to two digits of u after ${mc.trials} trials.`);
  if (secondOrder !== undefined && Math.abs(secondOrder / result.uGPerCm3 - 1) > 0.05)
    said.push(
      `Second-order terms change u from ${result.uGPerCm3.toPrecision(2)} to ${secondOrder.toPrecision(2)} g/cm³: the density does not follow the readings in a straight line over so wide a range.`,
    );
  return said;
}

function fromReadings(measurement: Measurement, loads: readonly Load[]): string[] {
  const said: string[] = [];
  const { balance, weighing } = measurement;
  const wet = balance.immersedReadabilityGrams ?? balance.readabilityGrams;
  for (const [series, d] of [
    [measurement.dry, balance.readabilityGrams] as const,
    ...weighing.series.map((s) => [s, wet] as const),
  ]) {
    const coarsest = Math.max(
      ...readingTexts(series).map((r) => lastPlace(r) * Number(gramsPerUnit[series.unit])),
    );
    if (coarsest > 1.5 * d)
      said.push(
        `The reading ${readingTexts(series)[0]} ${series.unit} shows steps of ${Number(coarsest.toPrecision(3))} g, coarser than the stated readability ${d} g. If a zero was left off at the end, write it; if the display is coarser, state its step.`,
      );
  }
  for (const l of loads)
    if (l.each.length >= ownScatterFrom && l.scatter.u === 0)
      said.push(
        `All ${l.each.length} readings ${l.scatter.name.replace(/, repeatability.*/, "")} are the same: the display hides any scatter below its step, so the step itself stays in the budget.`,
      );
  return said;
}

function fromLiquid({ liquid }: Measurement): string[] {
  const said: string[] = [];
  if (
    liquid.kind === "water" &&
    (liquid.purity === "tap" || liquid.purity === "boiled") &&
    liquid.dissolvedSolidsMgPerL === undefined
  )
    said.push(
      "Tap water with unknown dissolved solids: 0 to 600 mg/L is allowed for. Distilled water, or its measured solids, would narrow the result.",
    );
  if (liquid.kind !== "water" && liquid.temperature === undefined)
    said.push(
      "No temperature of the liquid was given: its stated density is taken as that of the weighing, and 20 °C for the piece.",
    );
  return said;
}

function fromPool({ pieces, oddGPerCm3 }: Measurement, result: Judged): string[] {
  if (pieces === 1) return [];
  const odd = oddGPerCm3 ?? oddByDefault * result.gPerCm3;
  const hidden = wouldHide(result, pieces, odd);
  const what = `of ${odd.toPrecision(3)} g/cm³`;
  const said =
    hidden === 0
      ? `A single odd one ${what} would move the mean out of its interval.`
      : `Up to ${hidden} odd ${hidden === 1 ? "one" : "ones"} ${what} could hide among them.`;
  return [`${pieces} pieces weighed together: the density is their mean, not that of each. ${said}`];
}
