import { median } from "../../calibration/median.ts";
import { type Message, message } from "../../calibration/message.ts";
import type { Finding, Profile } from "./profile.ts";
import type { Observed } from "./recording.ts";

/** How the balance sends: by itself, on its key, or not to be told from the recording. */
export interface Cadence {
  cadence: Profile["cadence"];
  /** false when only the owner can say whether lines come by themselves */
  evident: boolean;
  finding: Finding;
}

/** Faster than a hand presses a key again and again, lines a second. */
const fasterThanAHand = 3;
/** So many lines without a pause longer than this many usual gaps, while hands were at the pan, were sent by no key. */
const steadyLines = 20;
const longestPause = 4;

/**
 * Whether lines come by themselves, from what came: faster than a hand can press, or on and on while hands were busy with the
 * weight. Packets and jitter move single lines and change neither. `told` is the owner's word.
 */
export function cadenceOf(readings: readonly Observed[], stated: boolean | undefined): Cadence {
  const [first, last] = [readings[0]?.atMs ?? 0, readings.at(-1)?.atMs ?? 0];
  const gaps = readings.slice(1).map((line, i) => line.atMs - readings[i]!.atMs);
  const meanGapMs = gaps.length === 0 ? 0 : (last - first) / gaps.length;
  const longestMs = Math.max(0, ...gaps);
  const usualMs = Math.max(median(gaps) || 0, meanGapMs);
  const streams =
    readings.length >= 8 &&
    (usualMs < 1000 / fasterThanAHand || readings.length >= steadyLines) &&
    longestMs <= Math.max(longestPause * usualMs, 1200);
  const byItself = stated ?? streams;
  const perSecond = byItself && usualMs > 0 ? Math.max(0.1, Math.round(10_000 / usualMs) / 10) : null;
  return {
    cadence: { byItself, linesPerSecond: perSecond },
    evident: stated !== undefined || streams,
    finding: { field: "cadence", sure: true, message: cadenceMessage(byItself, perSecond, readings.length) },
  };
}

function cadenceMessage(byItself: boolean, perSecond: number | null, times: number): Message {
  return byItself
    ? message("learn.cadence.steady", { per_second: perSecond ?? 0 })
    : message("learn.cadence.uneven", { times });
}
