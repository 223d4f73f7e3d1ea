import { median } from "../../calibration/median.ts";
import { lineKind, type Observed } from "./recording.ts";

export interface Block {
  lines: number;
  /** false when the pauses do not show where a block begins */
  sure: boolean;
}

const largestBlock = 8;

/** Lines that always come in the same order of different kinds make one block. Labels may stand between blocks. */
export function blockOf(lines: readonly Observed[]): { block: Block; texts: Observed[] } | null {
  const kinds = lines.map((line) => lineKind(line.text));
  const counts = [...tally(kinds)].filter(([, count]) => count >= 4).sort((a, b) => b[1] - a[1]);
  let best: { block: Block; texts: Observed[] } | null = null;
  for (const [kind] of counts.slice(0, 8)) {
    const places = kinds.flatMap((k, i) => (k === kind ? [i] : []));
    const steps = places.slice(1).map((place, i) => place - places[i]!);
    const n = Number(
      [...tally(steps.map(String))].sort((a, b) => b[1] - a[1] || Number(a[0]) - Number(b[0]))[0]![0],
    );
    if (n < 2 || n > largestBlock) continue;
    const share = (fits: (step: number) => boolean) => steps.filter(fits).length / steps.length;
    if (share((step) => step === n) < 0.45 || share((step) => step >= n) < 0.95) continue;
    const { back, sure } = beginning(lines, places, n);
    const expected = kindsByPlace(kinds, places, n, back);
    if (!expected) continue;
    const texts = joined(lines, kinds, expected, back);
    if (texts.length > (best?.texts.length ?? 0)) best = { block: { lines: n, sure }, texts };
  }
  return best;
}

/**
 * The kinds of line at each place of a block, counted from the kind that repeats; null when a kind has two places: a
 * label every few lines makes no block.
 */
function kindsByPlace(kinds: readonly string[], places: readonly number[], n: number, back: number) {
  const seen = new Set<string>();
  const expected: Set<string>[] = [];
  for (let offset = -back; offset < n - back; offset += 1) {
    const here = tally(places.flatMap((place) => kinds[place + offset] ?? []));
    const usual = [...here].filter(([, count]) => count >= 0.05 * places.length).map(([kind]) => kind);
    if (usual.some((kind) => seen.has(kind))) return null;
    for (const kind of usual) seen.add(kind);
    expected.push(new Set(usual));
  }
  return expected;
}

/** A block begins after the longest pause. `back` is how many lines that is before the kind that repeats. */
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
  return { back: pauses.indexOf(ranked[0]!), sure: ranked[0]! > 2 * ranked[1]! };
}

/** The kind that repeats may come with other marks: at its own place any line counts that has no other place. */
function joined(
  lines: readonly Observed[],
  kinds: readonly string[],
  expected: readonly Set<string>[],
  back: number,
): Observed[] {
  const n = expected.length;
  const known = new Set(expected.flatMap((some) => [...some]));
  const fits = (kind: string, place: number) =>
    expected[place]!.has(kind) || (place === back && !known.has(kind) && /\d/.test(kind));
  const texts: Observed[] = [];
  for (let i = 0; i + n <= lines.length; ) {
    if (!expected.every((_, place) => fits(kinds[i + place]!, place))) {
      i += 1;
      continue;
    }
    const block = lines.slice(i, i + n);
    const last = block.at(-1)!;
    texts.push({
      atMs: last.atMs,
      at: last.at,
      bytes: Uint8Array.from(block.flatMap((line) => [...line.bytes])),
      shown: block.map((line) => line.shown).join(""),
      text: block.map((line) => line.text).join("\n"),
    });
    i += n;
  }
  return texts;
}

/** How often each key occurs. */
function tally(keys: Iterable<string>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}
