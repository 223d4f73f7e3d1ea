import { type Message, message } from "../../calibration/message.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import type { StatedDensity } from "./statement-shape.ts";

/** Inputs of the budget that further immersions lessen, and those that fall with the mass of the piece. */
const byRepeats = /repeatability/;
const byReadings = /repeatability|resolution|linearity|zero drift/;
/** More repeats or like pieces than this are no advice. */
const mostRepeats = 30;
const mostPieces = 50;

/**
 * What would bring the half-width of the interval down to what is needed, g/cm³: more repeats, a heavier piece or like
 * pieces together, a finer scale. Empty where none of these would. The parts of the variance say how far each goes:
 * those of the readings fall with d/m squared, those of repeatability with the number of immersions.
 */
export function wouldDecide(
  { expanded_g_cm3, mass_g, budget }: StatedDensity,
  neededGPerCm3: number,
  request: ComputeRequest,
): Message[] {
  const { balance, pieces } = request;
  const target = (neededGPerCm3 / expanded_g_cm3) ** 2;
  const part = (of: RegExp) =>
    budget.filter(({ input }) => of.test(input)).reduce((sum, { share }) => sum + share, 0);
  const times = (share: number) =>
    target > 1 - share ? share / (target - 1 + share) : Number.POSITIVE_INFINITY;
  const repeats = Math.ceil(times(part(byRepeats)) * immersionsOf(request));
  const factor = Math.sqrt(times(part(byReadings)));
  const found: Message[] = [];
  if (repeats > 1 && repeats <= mostRepeats)
    found.push(message("conformity.would.repeats", { count: repeats }));
  if (!Number.isFinite(factor)) return found;
  const like = Math.ceil(factor);
  if (pieces * like <= mostPieces)
    found.push(message("conformity.would.pieces", { count: Math.max(2, pieces * like) }));
  return [
    ...found,
    message("conformity.would.mass", { mass_g: twoFigures(mass_g * factor) }),
    message("conformity.would.readability", { readability_g: stepBelow(balance.readability_g / factor) }),
  ];
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
