/** When a line was written, s, and the usual time between lines; null for a line that arrived twice. */
export type LineTimes = (arrivedSeconds: number, value: number) => { seconds: number; pace: number } | null;

/** So many arrivals tell the pace. */
const remembered = 21;
/** The same value again within this time is one line that arrived twice, s. */
const twiceWithinSeconds = 0.01;
/** Lines come in packets when this share of the gaps is shorter than a quarter of the mean one. */
const shareOfShortGaps = 0.4;

/**
 * Times of lines in order. A cable or a converter may hold lines back and hand them over together: then they are spread
 * by their mean pace, none later than it arrived.
 */
export function createLineTimes(): LineTimes {
  let arrivals: number[] = [];
  let before = { seconds: Number.NEGATIVE_INFINITY, value: Number.NaN };
  return (arrived, value) => {
    const gaps = [...arrivals, arrived].slice(1).map((at, i) => at - arrivals[i]!);
    const pace = gaps.length === 0 ? Number.POSITIVE_INFINITY : (arrived - arrivals[0]!) / gaps.length;
    const short = gaps.filter((gap) => gap < pace / 4).length;
    const inPackets = gaps.length >= 5 && short > shareOfShortGaps * gaps.length;
    if (!inPackets && gaps.at(-1)! < twiceWithinSeconds && value === before.value) return null;
    arrivals = [...arrivals, arrived].slice(-remembered);
    const seconds = inPackets ? Math.min(arrived, before.seconds + pace) : Math.max(arrived, before.seconds);
    before = { seconds, value };
    return { seconds, pace: inPackets ? pace : middle(gaps) };
  };
}

function middle(gaps: readonly number[]): number {
  return gaps.toSorted((a, b) => a - b)[gaps.length >> 1] ?? Number.POSITIVE_INFINITY;
}
