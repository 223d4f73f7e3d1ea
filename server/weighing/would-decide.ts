import { measure } from "../../calibration/measure.ts";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import { expectedResult } from "../conformity/plan/planned-weighing.ts";
import { mostRepeats, othersOf, saying } from "../conformity/plan/remedies.ts";
import type { MethodName } from "../methods/index.ts";
import type { StatedDensity } from "./statement-shape.ts";

/** Inputs of the budget that further immersions lessen, and those that fall with the mass of the piece. */
const byRepeats = /repeatability/;
const byReadings = /repeatability|resolution|linearity|zero drift/;
/** More like pieces than this are no advice. */
const mostPieces = 50;

/**
 * What would bring the half-width of the interval down to what is needed, g/cm³: more immersions, a heavier piece or like
 * pieces together, another method, a finer scale. Empty where none of these would. The parts of the variance say how far
 * each goes: those of the readings fall with d/m squared, those of repeatability with the number of immersions; another
 * method is foreseen as the plan foresees it.
 */
export function wouldDecide(
  numbers: StatedDensity,
  neededGPerCm3: number,
  request: ComputeRequest,
): Message[] {
  const { expanded_g_cm3, mass_g, budget } = numbers;
  const { balance, pieces } = request;
  const target = (neededGPerCm3 / expanded_g_cm3) ** 2;
  const part = (of: RegExp) =>
    budget.filter(({ input }) => of.test(input)).reduce((sum, { share }) => sum + share, 0);
  const times = (share: number) =>
    target > 1 - share ? share / (target - 1 + share) : Number.POSITIVE_INFINITY;
  const repeats = Math.ceil(times(part(byRepeats)) * immersionsOf(request));
  const factor = Math.sqrt(times(part(byReadings)));
  const found: Message[] = [];
  if (repeats > 1 && repeats <= mostRepeats) found.push(saying.repeats(repeats));
  if (Number.isFinite(factor)) {
    found.push(saying.mass(twoFigures(mass_g * factor)));
    const like = Math.ceil(factor);
    if (pieces * like <= mostPieces) found.push(saying.pieces(Math.max(2, pieces * like)));
  }
  const other = othersOf(request.method).find((name) => foreseen(name, numbers, request) <= neededGPerCm3);
  const otherMethod = other && saying.method(other);
  if (otherMethod) found.push(otherMethod);
  if (Number.isFinite(factor)) found.push(saying.readability(stepBelow(balance.readability_g / factor)));
  return found;
}

/** Half-width that the same piece would have on the same balance by another method, one reading each, g/cm³. */
function foreseen(
  method: MethodName,
  { density_g_cm3, mass_g }: StatedDensity,
  { pieces, balance, liquid, hanger, bubble_allowance_mg, confidence, claim = "" }: ComputeRequest,
): number {
  const water = liquid?.kind === "water" ? liquid : undefined;
  const weighing = {
    claim,
    massG: mass_g / pieces,
    method,
    pieces,
    readabilityG: balance.readability_g,
    repeatabilityG: balance.repeatability_g,
    linearityG: balance.linearity_g,
    wireMm: hanger?.wire_mm ?? 0,
    ...(water && { celsius: water.temperature_c, uCelsius: water.temperature_u_c }),
    bubbleAllowanceMg: bubble_allowance_mg ?? 0,
    confidence,
  };
  try {
    return expectedResult(weighing, density_g_cm3, (measurement) => measure(measurement)).expandedGPerCm3;
  } catch (error) {
    if (error instanceof Refusal) return Number.POSITIVE_INFINITY;
    throw error;
  }
}

/** How often the load with the most readings was read. */
function immersionsOf(request: ComputeRequest): number {
  return Math.max(
    1,
    ...Object.values(request).map((one: unknown) =>
      typeof one === "object" && one !== null && "readings" in one && Array.isArray(one.readings)
        ? one.readings.length
        : 1,
    ),
  );
}

/** Rounded up to two figures. */
function twoFigures(grams: number): number {
  const place = 10 ** (Math.floor(Math.log10(grams)) - 1);
  return +(Math.ceil(grams / place) * place).toPrecision(2);
}

/** The decimal step of a scale at or below this. */
const stepBelow = (grams: number) => 10 ** Math.floor(Math.log10(grams) + 1e-9);
