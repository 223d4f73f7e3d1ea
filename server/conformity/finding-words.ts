import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import type { Metal } from "../metals/metal.ts";
import { fewNames } from "./distinct-names.ts";
import { bandAt } from "./exclusion.ts";
import type { FindingContext } from "./finding-context.ts";
import type { LookAlike } from "./look-alike.ts";

const percent = (confidence: number) => `${+(confidence * 100).toFixed(2)} %`;
const density = (gPerCm3: number, decimals = 2) => gPerCm3.toFixed(decimals);

/** Decimals that show the half-width with one or two figures. */
function decimalsFor(measured: MeasuredDensity): number {
  const half = halfWidth(measured);
  return half > 0 ? Math.min(5, Math.max(1, 1 - Math.floor(Math.log10(half)))) : 4;
}

function halfWidth(measured: MeasuredDensity): number {
  return (measured.intervalGPerCm3[1] - measured.intervalGPerCm3[0]) / 2;
}

const interval = (measured: MeasuredDensity) => {
  const places = decimalsFor(measured);
  const [low, high] = measured.intervalGPerCm3;
  return `${density(low, places)} to ${density(high, places)} g/cm³`;
};

export function noClaim(alive: Metal[]): string {
  return alive.length === 0
    ? "No claim was made, and no metal of the library has this density: look for a hollow, filled or stone-set piece, or a fault in the procedure."
    : `No claim was made. The density leaves alive: ${fewNames(alive, 5)}.`;
}

export function agrees(claimed: Metal, confidence: number): string {
  return `The density is that of ${claimed.name}, and at ${percent(confidence)} it excludes every other metal of the library and every mixture worth making.`;
}

export function notAlone(claimed: Metal, lookAlikes: LookAlike[], confidence: number): string {
  const metals = lookAlikes.filter((l) => l.kind === "metal");
  const madeUp = lookAlikes.filter((l) => l.kind !== "metal");
  const fits = [
    ...(metals.length > 0 ? [fewNames(metals, 4)] : []),
    ...(madeUp.length > 0 ? [`pieces made of two, such as ${fewNames(madeUp, 3)}`] : []),
  ].join("; ");
  return `The density does not exclude ${claimed.name} at ${percent(confidence)}, but it fits as well: ${fits}. No density separates these.`;
}

export function disagrees(
  measured: MeasuredDensity,
  claimed: Metal,
  celsius: number,
  confidence: number,
  others: Metal[],
): string {
  const band = bandAt(claimed, celsius);
  const low = measured.valueGPerCm3 < band.low;
  const first = `The interval ${interval(measured)} lies wholly ${low ? "below" : "above"} the band of ${claimed.name}, ${density(band.low)} to ${density(band.high)} g/cm³: at ${percent(confidence)} the density excludes the claim.`;
  const next = low
    ? " A low result is first a suspicion of the procedure: rule out bubbles, touching and pores, then weigh again."
    : " A high result has few innocent causes: rule them out, then weigh again.";
  const fits = others.length > 0 ? ` It fits ${fewNames(others, 5)}.` : "";
  return first + next + fits;
}

export function undecided(measured: MeasuredDensity, claimed: Metal, decidable: LookAlike[]): string {
  return `The interval ${interval(measured)} holds ${claimed.name} and also ${fewNames(decidable, 5)}, which a finer measurement would tell apart.`;
}

/** To one figure, never up: a coarser scale than needed must not be recommended. */
function roundedDown(grams: number): number {
  const place = 10 ** Math.floor(Math.log10(grams) + 1e-9);
  return +(Math.floor(grams / place + 1e-9) * place).toPrecision(1);
}

/** What readability, mass or number of pieces brings the half-width down to `neededGPerCm3`, as U falls with d/(mass · pieces). */
export function wouldDecide(
  measured: MeasuredDensity,
  neededGPerCm3: number,
  context: FindingContext,
): string {
  const now = halfWidth(measured);
  const places = decimalsFor(measured) + 1;
  if (neededGPerCm3 <= now * 1e-3)
    return "The value lies where both bands nearly meet: no finer density decides here; use the separating test named.";
  const factor = Math.max(1.1, Math.ceil((now / neededGPerCm3) * 10) / 10);
  const pieces = (context.pieces ?? 1) * Math.max(2, Math.ceil(factor));
  const readability = context.readabilityG
    ? `a readability of ${roundedDown(context.readabilityG / factor)} g or finer`
    : `a readability ${factor.toFixed(1)} times finer`;
  const mass = context.massG
    ? `a piece of ${+(context.massG * factor).toPrecision(2)} g or more`
    : `a piece ${factor.toFixed(1)} times heavier`;
  const fall =
    factor < 1.15
      ? `fall a little below ${density(now, places)}`
      : `fall from ${density(now, places)} to below ${density(neededGPerCm3, places)}`;
  return `The half-width must ${fall} g/cm³: ${readability}, ${mass}, or ${pieces} like pieces weighed together would do it, as long as readings dominate the budget.`;
}
