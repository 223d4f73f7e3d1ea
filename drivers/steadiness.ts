import { lastPlace } from "../calibration/decimal.ts";
import { type Message, message } from "../calibration/message.ts";
import type { MassUnit } from "../calibration/units.ts";
import type { LineRecord } from "./reading.ts";

/** A record that carries a reading. */
export type ReadingRecord = Extract<LineRecord, { reading: object }>;

/** What must be seen before a reading counts as settled. */
export interface Settling {
  /** lines in a row that must carry the balance's own mark of rest and agree within one last place */
  markedLines: number;
  /** without such a mark: how long the reading must have kept still, ms, and over at least how many lines */
  windowMs: number;
  windowLines: number;
  /** largest spread within the window, in last places of the display */
  spread: number;
  /** largest steady drift within the window, in last places per second */
  slopePerSecond: number;
}

/**
 * Defaults: two marked lines, so that one damaged line is always contradicted by its neighbour; without marks two
 * seconds within two last places that do not run away by more than half a place per second [common practice].
 */
export const usualSettling: Settling = {
  markedLines: 2,
  windowMs: 2000,
  windowLines: 4,
  spread: 2,
  slopePerSecond: 0.5,
};

/** A balance that prints once per press of its key: the one line is the reading. */
export const onKeySettling: Settling = { ...usualSettling, markedLines: 1, windowMs: 0, windowLines: 1 };

export type Judgement =
  | { settled: true; by: "mark" | "own-criterion"; lines: ReadingRecord[] }
  | { settled: false; because: Message };

/**
 * Has the balance come to rest? Judges the newest of the given readings, oldest first, by the balance's own mark if
 * any of them carries one, else by spread and slope over a window.
 */
export function judge(readings: readonly ReadingRecord[], settling: Settling): Judgement {
  const newest = readings.at(-1);
  if (!newest) return { settled: false, because: message("balance.rest.no-line") };
  const marked = readings.some(({ reading }) => reading.stability !== "unknown");
  return marked ? judgeByMark(readings, settling) : judgeByWindow(readings, newest, settling);
}

function judgeByMark(readings: readonly ReadingRecord[], { markedLines }: Settling): Judgement {
  const lines = readings.slice(-markedLines);
  const moving = lines.filter(({ reading }) => reading.stability !== "stable").length;
  if (lines.length < markedLines)
    return {
      settled: false,
      because: message("balance.rest.more-lines", { lines: markedLines - lines.length }),
    };
  if (moving > 0) return { settled: false, because: message("balance.rest.moving") };
  const mixed = differing(lines);
  if (mixed) return { settled: false, because: mixed };
  if (spreadInPlaces(lines) > 1.01) return { settled: false, because: message("balance.rest.disagree") };
  return { settled: true, by: "mark", lines };
}

function judgeByWindow(
  readings: readonly ReadingRecord[],
  newest: ReadingRecord,
  { windowMs, windowLines, spread, slopePerSecond }: Settling,
): Judgement {
  const from = newest.monotonicMs - windowMs;
  const first = readings.findLastIndex(({ monotonicMs }) => monotonicMs <= from);
  const lines = readings.slice(Math.max(first, 0));
  if (first < 0 || lines.length < windowLines) {
    const seconds = Math.max(0, (windowMs - (newest.monotonicMs - readings[0]!.monotonicMs)) / 1000);
    return {
      settled: false,
      because: message("balance.rest.watching", { seconds }),
    };
  }
  const mixed = differing(lines);
  if (mixed) return { settled: false, because: mixed };
  const places = spreadInPlaces(lines);
  if (places > spread + 0.01)
    return {
      settled: false,
      because: message("balance.rest.spread", { places, seconds: windowMs / 1000, allowed: spread }),
    };
  const slope = Math.abs(slopeInPlaces(lines));
  if (slope > slopePerSecond)
    return {
      settled: false,
      because: message("balance.rest.drift", { places_per_s: slope, allowed: slopePerSecond }),
    };
  return { settled: true, by: "own-criterion", lines };
}

function differing(lines: readonly ReadingRecord[]): Message | null {
  const units = new Set(lines.map(({ reading }) => reading.unit));
  if (units.size > 1) return message("balance.rest.units", { units: [...units] });
  const labels = new Set(lines.map(({ reading }) => reading.label));
  if (labels.size > 1) return message("balance.rest.labels");
  const places = new Set(lines.map(({ reading }) => lastPlace(reading.text)));
  return places.size > 1 ? message("balance.rest.decimals") : null;
}

/** Largest less smallest reading, in last places. */
function spreadInPlaces(lines: readonly ReadingRecord[]): number {
  const values = lines.map(({ reading }) => Number(reading.text));
  return (Math.max(...values) - Math.min(...values)) / lastPlace(lines[0]!.reading.text);
}

/** Slope of the straight line of least squares, in last places per second; 0 when all came at one time. */
function slopeInPlaces(lines: readonly ReadingRecord[]): number {
  const seconds = lines.map(({ monotonicMs }) => monotonicMs / 1000);
  const values = lines.map(({ reading }) => Number(reading.text));
  const meanS = seconds.reduce((sum, s) => sum + s, 0) / lines.length;
  const meanV = values.reduce((sum, v) => sum + v, 0) / lines.length;
  let top = 0;
  let bottom = 0;
  for (const [i, s] of seconds.entries()) {
    top += (s - meanS) * (values[i]! - meanV);
    bottom += (s - meanS) ** 2;
  }
  return bottom === 0 ? 0 : top / bottom / lastPlace(lines[0]!.reading.text);
}

/** Unit and decimals of a reading, as one word to compare by. */
export function gradation({ reading }: ReadingRecord): { unit: MassUnit; lastPlace: number } {
  return { unit: reading.unit, lastPlace: lastPlace(reading.text) };
}
