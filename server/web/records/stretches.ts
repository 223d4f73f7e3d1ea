import { dayRange } from "../../../calibration/local-time.ts";

/** A day, month or year of the calendar of a place, as it is named, with its first and last moment (ISO 8601, UTC). */
export interface Stretch {
  name: string;
  from: string;
  until: string;
}

const dayMs = 24 * 3600 * 1000;
const mostDays = 31;
const mostMonths = 24;

/**
 * The stretches that a range of days is told by, oldest first: days up to a month of them, months up to two years, else
 * years. The first and the last are cut to the range. Days as "2026-03-02"; none where the range holds no day.
 */
export function stretchesOf(firstDay: string, lastDay: string, zone: string): Stretch[] {
  const named = new Map<string, { first: string; last: string }>();
  const days = daysFrom(firstDay, lastDay);
  const months = new Set(days.map((day) => day.slice(0, 7))).size;
  const letters = days.length <= mostDays ? 10 : months <= mostMonths ? 7 : 4;
  for (const day of days) {
    const name = day.slice(0, letters);
    named.set(name, { first: named.get(name)?.first ?? day, last: day });
  }
  return [...named].flatMap(([name, { first, last }]) => {
    const [from, until] = [dayRange(first, zone)?.from, dayRange(last, zone)?.until];
    return from === undefined || until === undefined ? [] : [{ name, from, until }];
  });
}

function daysFrom(first: string, last: string): string[] {
  const days: string[] = [];
  for (let at = Date.parse(`${first}T00:00Z`); at <= Date.parse(`${last}T00:00Z`); at += dayMs)
    days.push(new Date(at).toISOString().slice(0, 10));
  return days;
}
