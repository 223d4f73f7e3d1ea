/** Draws of one virtual measurement. Each cause has its own name, so that no draw is used twice. */
export interface Chance {
  /** equally likely in (0, 1) */
  share(cause: string): number;
  /** equally likely from `from` to `to` */
  between(cause: string, from: number, to: number): number;
  normal(cause: string, mean: number, deviation: number): number;
}

/** A small seeded generator (splitmix32, public domain): the run is the same every time. */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 4294967296;
  };
}

function hashOf(text: string): number {
  let hash = 2166136261;
  for (const letter of text) hash = Math.imul(hash ^ letter.codePointAt(0)!, 16777619);
  return hash >>> 0;
}

const step = 0.001;
const reach = 6;
/** Probability below each z from −6 to 6, summed from the normal density itself (trapezoids of 0.001). */
const below = (() => {
  const table = new Float64Array((2 * reach) / step + 1);
  const density = (z: number) => Math.exp(-z * z * 0.5) / Math.sqrt(2 * Math.PI);
  for (let i = 1; i < table.length; i++)
    table[i] = table[i - 1]! + (step / 2) * (density((i - 1) * step - reach) + density(i * step - reach));
  return table;
})();

/** The z below which the share p lies; within 1e-6 where it matters, ends at ±6. */
function normalAt(p: number): number {
  let low = 0;
  let high = below.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (below[middle]! < p) low = middle;
    else high = middle;
  }
  const f = (p - below[low]!) / (below[high]! - below[low]!);
  return (low + Math.min(1, Math.max(0, f))) * step - reach;
}

/** Share of the normal law below z. */
export function normalBelow(z: number): number {
  return below[Math.min(below.length - 1, Math.max(0, Math.round((z + reach) / step)))]!;
}

/** Share of the normal law within ±z. */
export function normalWithin(z: number): number {
  const at = Math.min(below.length - 1, Math.max(0, Math.round((Math.abs(z) + reach) / step)));
  return 2 * below[at]! - 1;
}

/**
 * Chances for `count` measurements by Latin hypercube: each cause is cut into `count` equal strata and every stratum is
 * used once, in shuffled order. Every draw has its stated law, and a share counted over the class scatters less than
 * with draws made blindly.
 */
export function chances(seed: number, count: number): Chance[] {
  const strata = new Map<string, Float64Array>();
  const of = (cause: string): Float64Array => {
    const known = strata.get(cause);
    if (known) return known;
    const random = generator(seed ^ hashOf(cause));
    const cells = Float64Array.from({ length: count }, (_, i) => i);
    for (let i = count - 1; i > 0; i--) {
      const j = Math.floor(random() * (i + 1));
      [cells[i], cells[j]] = [cells[j]!, cells[i]!];
    }
    const drawn = cells.map((cell) => (cell + random()) / count);
    strata.set(cause, drawn);
    return drawn;
  };
  return Array.from({ length: count }, (_, i) => {
    const share = (cause: string) => of(cause)[i]!;
    return {
      share,
      between: (cause, from, to) => from + (to - from) * share(cause),
      normal: (cause, mean, deviation) => mean + deviation * normalAt(share(cause)),
    };
  });
}
