/** Room an entry needs on a lane, in user units from left to right. */
export interface Extent {
  left: number;
  right: number;
}

/** Average width of a letter of the plots' text in user units, on the generous side so that labels never touch. */
const letterWidth = 7.4;

export function textWidth(text: string): number {
  return text.length * letterWidth;
}

/** A text that would not fit its room ends in an ellipsis; the table under a plot has it whole. */
export function shortened(text: string, room: number): string {
  if (textWidth(text) <= room) return text;
  const letters = Math.max(1, Math.floor((text.length * room) / textWidth(text)) - 1);
  return `${text.slice(0, letters).trimEnd()}…`;
}

/**
 * Puts each entry on the first lane where it has room; no two entries on a lane overlap. Returns the lane of
 * each entry, in the order given, counted from 0.
 */
export function lanes(extents: readonly Extent[], gap = 10): number[] {
  const ends: number[] = [];
  const placed = new Array<number>(extents.length).fill(0);
  const order = extents.map((_, index) => index).sort((a, b) => extents[a]!.left - extents[b]!.left);
  for (const index of order) {
    const { left, right } = extents[index]!;
    const free = ends.findIndex((end) => end + gap <= left);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = right;
    placed[index] = lane;
  }
  return placed;
}

/** Left edge of a label that starts at `wanted` but stays between `min` and `max`. */
export function clampLabel(wanted: number, width: number, min: number, max: number): number {
  return Math.max(min, Math.min(wanted, max - width));
}

/**
 * Heights for labels that want to stand at these: in the order of what they want, never nearer to each other than
 * `apart`, each crowd about its own middle. Returned in the order given.
 */
export function spread(wanted: readonly number[], apart: number): number[] {
  const topOf = (crowd: readonly number[]) =>
    crowd.reduce((sum, index, place) => sum + wanted[index]! - place * apart, 0) / crowd.length;
  const crowds: { indices: number[]; top: number }[] = [];
  for (const index of wanted.map((_, at) => at).sort((a, b) => wanted[a]! - wanted[b]!)) {
    let crowd = { indices: [index], top: wanted[index]! };
    for (let above = crowds.at(-1); above; above = crowds.at(-1)) {
      if (above.top + above.indices.length * apart <= crowd.top) break;
      crowds.pop();
      const indices = [...above.indices, ...crowd.indices];
      crowd = { indices, top: topOf(indices) };
    }
    crowds.push(crowd);
  }
  const heights = [...wanted];
  for (const { indices, top } of crowds)
    for (const [place, index] of indices.entries()) heights[index] = top + place * apart;
  return heights;
}
