import { type Agreement, agreement, type Verdict } from "../../../calibration/agreement.ts";
import { expectedOf } from "../../../calibration/balance.ts";
import { mean } from "../../../calibration/mean.ts";
import type { Params } from "../../../calibration/message.ts";
import { withoutZeroDrift } from "../../../calibration/zero-drift.ts";
import { methods } from "../../methods/index.ts";
import type { Offer, Severity } from "./check.ts";
import { grams, type Situation, type SituationReading, zeroMoved } from "./situation.ts";

/** Readings of one load that should agree. */
export interface Repeated {
  /** last key of its series in a compute request: dry, immersed, rise, full, with_piece */
  role: string;
  offers: "dry" | "wet";
  readings: readonly SituationReading[];
  repeatabilityGrams: number;
  readabilityGrams: number;
  /** what one reading should scatter with its roundings */
  statedGrams: number;
  /** nobody stated or measured that scatter */
  assumed: boolean;
  found: Agreement;
}

/** Every load with more than one reading, dry first; none where they were taken in pairs, since their pairs vary together. */
export function repeatedIn(situation: Situation): Repeated[] {
  if (situation.paired) return [];
  const { method, dry, wet, flaskFull = [], balance } = situation;
  const last = methods[method].loads.at(-1)?.key.at(-1) ?? "dry";
  const loads = [
    { role: "dry", offers: "dry" as const, readings: dry, where: "dry" as const },
    { role: "full", offers: "wet" as const, readings: flaskFull, where: "wet" as const },
    { role: last, offers: "wet" as const, readings: wet, where: "wet" as const },
  ];
  return loads
    .filter(({ readings }) => readings.length > 1)
    .map(({ role, offers, readings, where }) => {
      const wet = where === "wet";
      const readabilityGrams =
        (wet ? balance.immersedReadabilityGrams : undefined) ?? balance.readabilityGrams;
      const repeatabilityGrams = wet ? balance.immersedRepeatabilityGrams : balance.repeatabilityGrams;
      const dof = wet ? balance.immersedRepeatabilityDof : balance.repeatabilityDof;
      const traits = {
        readabilityGrams,
        repeatabilityGrams,
        repeatabilityDof: dof ?? Number.POSITIVE_INFINITY,
      };
      const expected = expectedOf(traits);
      const moved = wet && role !== "full" ? zeroMoved(situation) : 0;
      return {
        role,
        offers,
        readings,
        repeatabilityGrams,
        readabilityGrams,
        statedGrams: expected.scatterGrams,
        assumed: (wet ? balance.immersedRepeatabilityAssumed : balance.repeatabilityAssumed) === true,
        found: agreement(withoutZeroDrift(readings.map(grams), moved), expected),
      };
    });
}

export const severityOf = (verdict: Exclude<Verdict, "agree">): Severity =>
  verdict === "contradict" ? "stop" : "warn";

/** The reading that stands out: its role, its place from 0, its number from 1, its value, and the side it lies on. */
export function standingOut({ role, readings, found }: Repeated): Params {
  const masses = readings.map(grams);
  const value = masses[found.standsOut]!;
  const middle = mean(masses);
  return {
    role,
    count: readings.length,
    index: found.standsOut,
    number: found.standsOut + 1,
    value: { decimal: readings[found.standsOut]!.text },
    value_g: value,
    unit: readings[found.standsOut]!.unit,
    side: readings.length === 2 ? "pair" : value < middle ? "low" : "high",
    span_g: found.span,
  };
}

/** The others without the reading that stands out agree, so that it alone may be excluded. */
export function aloneStandsOut({ readings, statedGrams, found }: Repeated): boolean {
  const others = readings.filter((_, place) => place !== found.standsOut).map(grams);
  return (
    others.length > 1 &&
    agreement(others, { scatterGrams: statedGrams, dof: Number.POSITIVE_INFINITY }).verdict === "agree"
  );
}

export const excluding = ({ offers, found }: Repeated): Offer => ({
  do: "exclude",
  role: offers,
  places: [found.standsOut],
});
