import { median } from "../median.ts";

/** When a line was written, s, the usual time between lines, and whether it is the one before that arrived once more. */
export type LineTimes = (
  arrivedSeconds: number,
  value: number,
) => { seconds: number; pace: number; again: boolean };

/** So many arrivals tell the pace. */
const remembered = 21;
/** The same value again within this time is one line that arrived twice, s. */
const twiceWithinSeconds = 0.01;
/** Lines come in packets when so large a share of the gaps is shorter than so much of the mean one. */
const packets = { shareOfGaps: 0.4, shareOfMean: 0.25, leastGaps: 5 };

/**
 * Times of lines in order. A cable or a converter may hold lines back and hand them over together: then they are spread
 * evenly by the pace from packet to packet, each after the packet before it and none later than it arrived.
 */
export function createLineTimes(): LineTimes {
  let arrivals: number[] = [];
  let before = { seconds: Number.NEGATIVE_INFINITY, value: Number.NaN };
  return (arrived, value) => {
    const all = [...arrivals, arrived];
    const gaps = all.slice(1).map((at, i) => at - all[i]!);
    const packed = packedIn(all, gaps);
    if (!packed && gaps.at(-1)! < twiceWithinSeconds && value === before.value)
      return { seconds: before.seconds, pace: usualOf(gaps), again: true };
    arrivals = all.slice(-remembered);
    const seconds = packed
      ? Math.min(arrived, Math.max(before.seconds + packed.pace, packed.beforeSeconds))
      : Math.max(arrived, before.seconds);
    before = { seconds, value };
    return { seconds, pace: packed ? packed.pace : usualOf(gaps), again: false };
  };
}

/** Pace of lines that come in packets, and when the last line before this packet came; undefined where they do not. */
function packedIn(all: readonly number[], gaps: readonly number[]) {
  const mean = (all.at(-1)! - all[0]!) / gaps.length;
  const starts = [...gaps.keys()].filter((i) => gaps[i]! >= packets.shareOfMean * mean);
  const shorts = gaps.length - starts.length;
  if (gaps.length < packets.leastGaps || shorts <= packets.shareOfGaps * gaps.length) return undefined;
  const [first = 0, last = 0] = [starts[0], starts.at(-1)];
  // between the same places of two packets: within one the mean over all would rise and fall
  const pace = last > first ? (all[last + 1]! - all[first + 1]!) / (last - first) : mean;
  return { pace, beforeSeconds: all[last]! };
}

const usualOf = (gaps: readonly number[]) => (gaps.length === 0 ? Number.POSITIVE_INFINITY : median(gaps));
