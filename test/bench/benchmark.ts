import type { Peer } from "../setup/debian.ts";

/** One figure of a benchmark. Beyond its limit the run goes on and fails at its end. */
export interface Figure {
  what: string;
  value: number;
  unit: string;
  atMost?: number;
  atLeast?: number;
}

/** What a file `*.bench.ts` exports as its default. */
export interface Benchmark {
  name: string;
  /** what the owner of this machine waits for meanwhile, s on two cores */
  aboutSeconds: number;
  /** programs of others that it is measured against */
  needs?: readonly Peer[];
  measure(): Promise<Figure[]>;
}

/** Median time of one call in ms, over about `seconds` of calls after a warm-up. */
export async function medianMs(work: () => unknown, seconds = 2): Promise<number> {
  const times: number[] = [];
  const start = performance.now();
  for (let now = start; times.length < 5 || now - start < seconds * 1000; now = performance.now()) {
    await work();
    times.push(performance.now() - now);
  }
  return quantile(times.slice(Math.min(20, times.length >> 2)), 0.5);
}

/** The value below which this share of the values lies; NaN of none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
