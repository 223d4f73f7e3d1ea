import { lastPlace } from "../calibration/decimal.ts";
import { type Message, message } from "../calibration/message.ts";
import { createDisplayStep } from "../calibration/stable-reading/display-step.ts";
import type { StableLine } from "../calibration/stable-reading/points.ts";
import type { Judgement } from "../calibration/stable-reading/stable-reading.ts";
import { gramsPerUnit, type MassUnit } from "../calibration/units.ts";
import type { LineRecord } from "./reading.ts";

/** A record that carries a reading. */
export type ReadingRecord = Extract<LineRecord, { reading: object }>;

/** Turns the readings of one balance into lines in g for judging their rest; remembers how its display counts. */
export type StableLines = (record: ReadingRecord) => StableLine;

export function createStableLines(): StableLines {
  const stepOf = createDisplayStep();
  return ({ monotonicMs, reading: { text, unit, grams, stability } }) => {
    const place = lastPlace(text) * Number(gramsPerUnit[unit]);
    return {
      seconds: monotonicMs / 1000,
      value: Number(grams),
      step: stepOf(Number(grams), place),
      marked: stability === "unknown" ? null : stability === "stable",
    };
  };
}

/** Why a reading cannot be taken yet; undefined once it was. */
export function notYet(judgement: Judgement, { reading }: ReadingRecord): Message | undefined {
  if (judgement.state === "drifting") return driftMessage(judgement.perSecond);
  if (judgement.state !== "waiting") return undefined;
  return message(reading.stability === "moving" ? "balance.rest.moving" : "balance.rest.watching");
}

/** "Still rising 0.3 mg a second", by g a second. */
export function driftMessage(perSecond: number): Message {
  return message("balance.rest.drifting", { g_per_s: perSecond });
}

/** Unit and decimals of a reading, as one word to compare by. */
export function gradation({ reading }: ReadingRecord): { unit: MassUnit; lastPlace: number } {
  return { unit: reading.unit, lastPlace: lastPlace(reading.text) };
}
