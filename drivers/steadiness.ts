import { lastPlace } from "../calibration/decimal.ts";
import { type Message, message } from "../calibration/message.ts";
import { createDisplayStep } from "../calibration/stable-reading/display-step.ts";
import { createLineTimes } from "../calibration/stable-reading/line-times.ts";
import type { StableLine } from "../calibration/stable-reading/points.ts";
import type { Judgement } from "../calibration/stable-reading/stable-reading.ts";
import { gramsPerUnit, type MassUnit } from "../calibration/units.ts";
import type { LineRecord } from "./reading.ts";

/** A record that carries a reading. */
export type ReadingRecord = Extract<LineRecord, { reading: object }>;

/**
 * Turns the readings of one balance into lines in g for judging their rest; remembers how its display counts and how its
 * lines come. Whoever asks for the same record again gets the same line.
 */
export type StableLines = (record: ReadingRecord) => StableLine;

export function createStableLines(): StableLines {
  const stepOf = createDisplayStep();
  const timesOf = createLineTimes();
  let last: { record: ReadingRecord; line: StableLine } | undefined;
  return (record) => {
    if (record === last?.record) return last.line;
    const { monotonicMs, reading } = record;
    const { text, unit, grams, stability } = reading;
    const place = lastPlace(text) * Number(gramsPerUnit[unit]);
    const line = {
      ...timesOf(monotonicMs / 1000, Number(grams)),
      value: Number(grams),
      step: stepOf(Number(grams), place),
      marked: stability === "unknown" ? null : stability === "stable",
    };
    last = { record, line };
    return line;
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
