import { localTime, momentsOf } from "../../../calibration/local-time.ts";
import { type Message, message } from "../../../calibration/message.ts";

/** Units a price can be told per. */
export const pers = ["ozt", "g", "dwt"] as const;

const shape =
  /^(\d{4}-\d{2}-\d{2}|\d{1,2}\.\d{1,2}\.\d{4})(?: |T|, )(\d{2}:\d{2})(?::(\d{2}))?\s*(Z|UTC|[+-]\d{2}:?\d{2})?$/i;

/**
 * When a price was read, as a moment (ISO 8601, UTC): a day and a time of day on the clock of the place, or with the
 * zone behind it. What is no such moment, comes twice, or has not come yet goes back with the reason.
 */
export function priceMoment(
  typed: string,
  { zone, now }: { zone: string; now: Date },
): { moment: string } | { message: Message } {
  const [, typedDay = "", minutes = "", seconds = "00", named] = shape.exec(typed.trim()) ?? [];
  const day = isoDay(typedDay);
  const time = `${minutes}:${seconds}`;
  if (day === "" || !isDayAndTime(day, time))
    return { message: message("price.refused.no-moment", { at: typed }) };
  const found =
    named === undefined ? momentsOf(day, time, zone) : [Date.parse(`${day}T${time}${offsetOf(named)}`)];
  const [first, second] = found.map((moment) => new Date(moment).toISOString());
  if (first === undefined) return { message: message("price.refused.skipped", { at: typed, zone }) };
  if (second !== undefined)
    return {
      message: message("price.refused.twice", {
        at: typed,
        zone,
        offsets: { anyOf: [first, second].map((moment) => localTime(moment, zone).offset) },
      }),
    };
  if (Date.parse(first) > now.getTime() + 60_000) {
    const here = localTime(now.toISOString(), zone);
    return {
      message: message("price.refused.to-come", { at: typed, now: `${here.day} ${here.time.slice(0, 5)}` }),
    };
  }
  return { moment: first };
}

/** 29.11.2026 as 2026-11-29: with points the day stands first, in every language (DIN 5008). */
function isoDay(typed: string): string {
  const [, day, month, year] = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(typed) ?? [];
  return day && month && year ? `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}` : typed;
}

/** True for a day that the calendar has and a time that a clock shows. */
function isDayAndTime(day: string, time: string): boolean {
  const moment = new Date(`${day}T${time}Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().startsWith(`${day}T${time}`);
}

function offsetOf(named: string): string {
  if (/^(z|utc)$/i.test(named)) return "Z";
  return named.includes(":") ? named : `${named.slice(0, 3)}:${named.slice(3)}`;
}
