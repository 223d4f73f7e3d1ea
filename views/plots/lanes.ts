/** Room an entry needs on a lane, in user units from left to right. */
export interface Extent {
  left: number;
  right: number;
}

/** Average width of a letter of the plots' text in user units, on the generous side so that labels never touch. */
const letterWidth = 7.9;

export function textWidth(text: string): number {
  return text.length * letterWidth;
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
