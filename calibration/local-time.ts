/** A moment as the clock on the wall of a place shows it. */
export interface LocalTime {
  /** 2026-03-02 */
  day: string;
  /** 14:30:05 */
  time: string;
  /** how far the clock is ahead of UTC, "+01:00" */
  offset: string;
}

const minuteMs = 60_000;
const dayMs = 24 * 60 * minuteMs;

/** True for a time zone of the IANA list that this runtime knows, such as Europe/Berlin. */
export function isTimeZone(zone: string): boolean {
  try {
    return zone !== "" && formatOf(zone) !== undefined;
  } catch {
    return false;
  }
}

/** A moment (ISO 8601, UTC) on the clock of a time zone. Throws RangeError for another zone or no moment. */
export function localTime(at: string, zone: string): LocalTime {
  const moment = Date.parse(at);
  const shown = new Date(moment + offsetMs(moment, zone)).toISOString();
  return { day: shown.slice(0, 10), time: shown.slice(11, 19), offset: offsetText(offsetMs(moment, zone)) };
}

/** A moment as pages and papers write it: day and time on the clock of the place, with how far it is from UTC. */
export function momentText(at: string, zone: string): string {
  const { day, time, offset } = localTime(at, zone);
  return `${day} ${time} ${zone === "UTC" ? "UTC" : offset}`;
}

/**
 * The moments (ISO 8601, UTC) at which the clock of a zone shows a day and a time of day, "2026-03-02" and "14:30": one,
 * none in the hour that is skipped in spring, two in the hour that comes twice in autumn.
 */
export function momentsOf(day: string, time: string, zone: string): string[] {
  const asUtc = Date.parse(`${day}T${time.length === 5 ? `${time}:00` : time}Z`);
  const offsets = new Set([asUtc - dayMs, asUtc + dayMs].map((moment) => offsetMs(moment, zone)));
  return [...offsets]
    .map((offset) => asUtc - offset)
    .filter((moment) => moment + offsetMs(moment, zone) === asUtc)
    .sort((a, b) => a - b)
    .map((moment) => new Date(moment).toISOString());
}

/** The first and the last millisecond (ISO 8601, UTC) of a day of a zone; undefined for no day of the calendar. */
export function dayRange(day: string, zone: string): { from: string; until: string } | undefined {
  const asUtc = Date.parse(`${day}T00:00:00.000Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || Number.isNaN(asUtc)) return undefined;
  const start = new Date(asUtc);
  if (start.toISOString().slice(0, 10) !== day) return undefined;
  const next = new Date(asUtc + dayMs).toISOString().slice(0, 10);
  return {
    from: new Date(firstMs(day, zone)).toISOString(),
    until: new Date(firstMs(next, zone) - 1).toISOString(),
  };
}

/** When the clock of a zone begins a day; where midnight is skipped, the moment that the clock is put forward. */
function firstMs(day: string, zone: string): number {
  const [midnight] = momentsOf(day, "00:00", zone);
  if (midnight !== undefined) return Date.parse(midnight);
  const asUtc = Date.parse(`${day}T00:00:00Z`);
  return asUtc - offsetMs(asUtc - dayMs, zone);
}

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const format = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
  });
  formats.set(zone, format);
  return format;
}

/** Of each zone the last offset that was worked out, and the minute it is of: clocks are changed at full minutes. */
const lastOffsets = new Map<string, { minute: number; ms: number }>();

/** Moments of one time follow each other, and working an offset out costs as much as a page's part. */
function offsetMs(moment: number, zone: string): number {
  const minute = Math.floor(moment / minuteMs);
  const last = lastOffsets.get(zone);
  if (last?.minute === minute) return last.ms;
  const ms = offsetAt(moment, zone);
  lastOffsets.set(zone, { minute, ms });
  return ms;
}

function offsetAt(moment: number, zone: string): number {
  const parts = Object.fromEntries(
    formatOf(zone)
      .formatToParts(moment)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
  const shown = Date.UTC(year, month - 1, day, hour, minute, second);
  return shown - Math.floor(moment / 1000) * 1000;
}

function offsetText(ms: number): string {
  const minutes = Math.abs(Math.round(ms / minuteMs));
  const two = (value: number) => String(value).padStart(2, "0");
  return `${ms < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
