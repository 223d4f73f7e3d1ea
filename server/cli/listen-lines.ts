import type { Message } from "../../calibration/message.ts";
import type { Balance } from "../../drivers/device.ts";
import { createLoadsTaken, type LoadEvent } from "../../drivers/loads-taken.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import type { Tell } from "../../views/messages/tell.ts";

/** When a line came: by the wall clock, or in ms from the first byte. */
export type LineTime = (record: LineRecord) => { at: string } | { at_ms: number };

/** The lines that are printed of one record. */
export type PrintedLines = (record: LineRecord) => string[];

export const byWallClock: LineTime = ({ at }) => ({ at });

/** In whole ms from the first byte of this balance, or its first line where no bytes are seen; 0 before there was one. */
export function fromFirstByte(balance: Pick<Balance, "firstByteMs">): LineTime {
  let firstMs: number | undefined;
  return ({ monotonicMs, raw }) => {
    firstMs ??= balance.firstByteMs?.() ?? (raw === "" ? undefined : monotonicMs);
    return { at_ms: Math.round(monotonicMs - (firstMs ?? monotonicMs)) };
  };
}

/** Time, raw, and either reading or event; the code of an event is its kind. With `onlyRaw` lines are not read. */
export function everyLine(time: LineTime, onlyRaw: boolean, tell: Tell): PrintedLines {
  return (record) => {
    const { raw, reading, event } = record;
    const begins = { ...time(record), raw };
    if (onlyRaw && raw !== "") return [JSON.stringify(begins)];
    if (event) return [JSON.stringify({ ...begins, event: eventOf(event.kind, event, tell) })];
    const { text, unit, grams, stability } = reading;
    return [JSON.stringify({ ...begins, reading: { text, unit, grams, stability } })];
  };
}

/** Time, and a load that was taken or an event; readings are not printed. */
export function everyLoad(time: LineTime, onKey: boolean, tell: Tell): PrintedLines {
  const hear = createLoadsTaken({ onKey });
  return (record) => {
    const at = time(record);
    const heard = hear(record).map((one) => JSON.stringify({ ...at, ...loadLine(one, tell) }));
    const { event } = record;
    return event ? [...heard, JSON.stringify({ ...at, event: eventOf(event.kind, event, tell) })] : heard;
  };
}

function loadLine(event: LoadEvent, tell: Tell) {
  if (event.kind !== "taken") return { event: eventOf(event.kind, event.message, tell) };
  const { reading, grams, uGrams, driftUGrams, possibleGrams, flags } = event.taken;
  const { text, unit } = reading;
  const possible = possibleGrams > 0 && { possible_g: possibleGrams };
  return { taken: { text, unit, grams, u_g: uGrams, drift_u_g: driftUGrams, ...possible, flags } };
}

const eventOf = (code: string, { code: message, params }: Pick<Message, "code" | "params">, tell: Tell) => ({
  code,
  params,
  message: tell(message, params),
});
