import type { MassUnit } from "../../../../calibration/units.ts";
import type { Check, CheckCode } from "../../../../server/weighing/checks/check.ts";
import { checksOf } from "../../../../server/weighing/checks/index.ts";
import type { Situation, SituationReading } from "../../../../server/weighing/checks/situation.ts";

const start = Date.parse("2026-03-02T09:00:00.000Z");

/** Readings a minute apart, or as many seconds as given. */
export function readings(
  texts: readonly string[],
  unit: MassUnit = "g",
  everySeconds = 60,
): SituationReading[] {
  return texts.map((text, place) => ({
    at: new Date(start + place * everySeconds * 1000).toISOString(),
    text,
    unit,
  }));
}

export const fineBalance = {
  readabilityGrams: 0.0001,
  repeatabilityGrams: 0.0001,
  immersedRepeatabilityGrams: 0.0003,
};
export const pocketScale = {
  readabilityGrams: 0.01,
  repeatabilityGrams: 0.007,
  immersedRepeatabilityGrams: 0.014,
};
export const kitchenScale = {
  readabilityGrams: 0.1,
  repeatabilityGrams: 0.07,
  immersedRepeatabilityGrams: 0.14,
};

export const fineSilver = { metal: { metal: "ag-999" }, lowGPerCm3: 10.467, highGPerCm3: 10.53 };
export const fineGold = { metal: { metal: "au-999" }, lowGPerCm3: 19.22, highGPerCm3: 19.33 };
export const crownGold = { metal: { metal: "au-917" }, lowGPerCm3: 17.4, highGPerCm3: 17.62 };

/** An ounce of silver on the fine balance, nothing wrong with it. */
export const soundOunce: Situation = {
  method: "hung",
  dry: readings(["31.1035"]),
  wet: readings(["28.1435", "28.1438", "28.1434"]),
  claim: fineSilver,
  waterCelsius: 21.4,
  roomCelsius: 21.9,
  balance: fineBalance,
};

export function codesIn(situation: Situation): CheckCode[] {
  return checksOf(situation).map(({ code }) => code);
}

/** The check of that code; fails loudly when nothing was found. */
export function check(situation: Situation, code: CheckCode): Check {
  const found = checksOf(situation).find((one) => one.code === code);
  if (found === undefined)
    throw new Error(`${code} was not found, but ${codesIn(situation).join(", ") || "nothing"}.`);
  return found;
}
