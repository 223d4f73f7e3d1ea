import { median, type Observed, skeleton, tally } from "./observed.ts";

export interface Block {
  lines: number;
  /** false when the pauses do not show where a block begins */
  sure: boolean;
}

const largestBlock = 8;

/** Lines that always come in the same order of different kinds make one block. Labels may stand between blocks. */
export function blockOf(lines: readonly Observed[]): { block: Block; texts: Observed[] } | null {
  const usual = lines.filter((line) => line.at.phase !== "overloaded");
  const kinds = usual.map((line) => skeleton(line.text));
  const counts = [...tally(kinds)].filter(([, count]) => count >= 4).sort((a, b) => b[1] - a[1]);
  for (const [kind] of counts) {
    const places = kinds.flatMap((k, i) => (k === kind ? [i] : []));
    const steps = places.slice(1).map((place, i) => place - places[i]!);
    const n = Number([...tally(steps.map(String))].sort((a, b) => b[1] - a[1])[0]![0]);
    if (n < 2 || n > largestBlock) continue;
    const share = (fits: (step: number) => boolean) => steps.filter(fits).length / steps.length;
    if (share((step) => step === n) < 0.6 || share((step) => step >= n) < 0.95) continue;
    const { first, sure } = beginning(usual, places, n);
    if (!differ(kinds, places, n, first)) continue;
    return { block: { lines: n, sure }, texts: joined(usual, places, n, first) };
  }
  return null;
}

/** The places of a block hold different kinds of line; a label every few lines is no block. */
function differ(kinds: readonly string[], places: readonly number[], n: number, back: number): boolean {
  const seen = new Set<string>();
  for (let offset = -back; offset < n - back; offset += 1) {
    const here = tally(places.flatMap((place) => kinds[place + offset] ?? []));
    for (const [kind, count] of here) {
      if (count < 0.05 * places.length) continue;
      if (seen.has(kind)) return false;
      seen.add(kind);
    }
  }
  return true;
}

/** A block begins after the longest pause. `first` is its first line counted from the kind that repeats, 0 to n-1 before it. */
function beginning(lines: readonly Observed[], places: readonly number[], n: number) {
  const pauses = Array.from({ length: n }, (_, back) =>
    median(
      places.flatMap((place) => {
        const line = lines[place - back];
        const before = lines[place - back - 1];
        return line && before ? [line.atMs - before.atMs] : [];
      }),
    ),
  );
  const ranked = [...pauses].sort((a, b) => b - a);
  return { first: pauses.indexOf(ranked[0]!), sure: ranked[0]! > 2 * ranked[1]! };
}

function joined(lines: readonly Observed[], places: readonly number[], n: number, back: number): Observed[] {
  return places.flatMap((place) => {
    const block = lines.slice(place - back, place - back + n);
    const last = block.at(-1);
    if (place - back < 0 || block.length < n || !last) return [];
    return [
      {
        atMs: last.atMs,
        at: last.at,
        bytes: Uint8Array.from(block.flatMap((line) => [...line.bytes])),
        shown: block.map((line) => line.shown).join(""),
        text: block.map((line) => line.text).join("\n"),
      },
    ];
  });
}
