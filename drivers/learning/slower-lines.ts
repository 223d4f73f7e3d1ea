import { mean } from "../../calibration/mean.ts";

/** A number that a line carried. */
export interface NumberAt {
  value: number;
  atMs: number;
}

/** Pairs of lines in motion below which nothing is concluded. */
const fewestPairs = 10;
/** Numbers that went less far than so many last places are at rest. */
const movedPlaces = 8;
/** Lines whose pauses before and behind differ more than so many times came in packets: they were sent at an even pace. */
const evenPauses = 2.5;
/** What one kind of line reaches in fewer than one of 100,000 recordings, standard deviations. */
const clearly = 5;

/**
 * True when every second number of a balance clearly follows its weight more slowly than the others. Between its neighbours a
 * number that leads lies ahead in the direction of the motion, and one that follows lies behind; of one kind of line neither
 * depends on whether a line is the first or the second of a pair. `lastPlace` in the unit of the numbers.
 */
export function slowerEverySecond(numbers: readonly NumberAt[], lastPlace: number): boolean {
  const ahead = numbers.map((_, i) => aheadOfNeighbours(numbers.slice(Math.max(0, i - 1), i + 2), lastPlace));
  const differences: number[] = [];
  for (let i = 0; i + 1 < ahead.length; i += 2) {
    const [first, second] = [ahead[i], ahead[i + 1]];
    if (first !== undefined && second !== undefined) differences.push(first - second);
  }
  if (differences.length < fewestPairs) return false;
  const middle = mean(differences);
  const scatter = Math.sqrt(mean(differences.map((one) => (one - middle) ** 2)));
  return Math.abs(middle) > (clearly * scatter) / Math.sqrt(differences.length);
}

/** How far the middle one of three numbers lies ahead of the line through the others, -1 to 1; undefined at rest. */
function aheadOfNeighbours(three: readonly NumberAt[], lastPlace: number): number | undefined {
  const [before, here, behind] = three;
  if (!before || !here || !behind) return undefined;
  // a number that is sent twice says nothing
  if (here.value === before.value || here.value === behind.value) return undefined;
  const [first, second] = [here.atMs - before.atMs, behind.atMs - here.atMs];
  const inPackets = Math.max(first, second) > evenPauses * Math.min(first, second);
  const went = behind.value - before.value;
  const off = here.value - before.value - went * (inPackets ? 0.5 : first / (first + second));
  const size = Math.abs(off) + Math.abs(went) / 2;
  return size > movedPlaces * lastPlace ? (off * Math.sign(went)) / size : undefined;
}
