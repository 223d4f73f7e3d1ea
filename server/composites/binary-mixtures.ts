import { componentDensity, componentSymbols } from "../alloys/component-density.ts";
import { excessTerm } from "../alloys/excess-terms.ts";
import type { Likelihood } from "../alloys/metal.ts";
import { type KnownPair, knownPairs } from "./known-pairs.ts";

/** A density interval in g/cm³ at 20 °C. */
export type DensityInterval = readonly [low: number, high: number];

/** Two components that reach a density interval together. */
export interface BinaryMixture {
  kind: "mixture";
  id: string;
  name: string;
  /** the denser first */
  pair: readonly [string, string];
  /** mass fraction of the first component, lowest and highest */
  share: readonly [number, number];
  likelihood: Likelihood;
  known: KnownPair | null;
}

/**
 * Mass fraction of a in a mixture with b of specific volume v: volumes add, with the pair's excess term if it has one,
 * v = v_b + (v_a − v_b + B)·w − B·w². May fall outside 0…1.
 */
export function shareAt(a: string, b: string, gPerCm3: number): number {
  const [va, vb] = [1 / componentDensity(a).gPerCm3, 1 / componentDensity(b).gPerCm3];
  const excess = excessTerm(a, b)?.bCm3PerG ?? 0;
  const slope = va - vb + excess;
  const wanted = 1 / gPerCm3 - vb;
  const root = Math.sqrt(Math.max(0, slope ** 2 - 4 * excess * wanted));
  return (2 * wanted) / (slope + Math.sign(slope) * root);
}

const knownByPair = new Map(knownPairs.map((k) => [[...k.pair].sort().join("+"), k]));
const densestFirst = [...componentSymbols].sort(
  (a, b) => componentDensity(b).gPerCm3 - componentDensity(a).gPerCm3,
);

/** A share nearer to an end than this is the pure metal, and no mixture. */
const leastShare = 0.002;

/** The pairs somebody is known to make that reach the interval at some share. */
export function knownMixtures([low, high]: DensityInterval): BinaryMixture[] {
  return knownPairs.flatMap(({ pair }) => {
    const [a, b] = pair;
    const aIsDense = componentDensity(a).gPerCm3 > componentDensity(b).gPerCm3;
    return mixtureOf(aIsDense ? a : b, aIsDense ? b : a, low, high) ?? [];
  });
}

/** Every pair of components that reaches the interval at some share, in no particular order. */
export function binaryMixtures([low, high]: DensityInterval): BinaryMixture[] {
  const found: BinaryMixture[] = [];
  for (const [i, dense] of densestFirst.entries()) {
    if (componentDensity(dense).gPerCm3 < low) break;
    for (const light of densestFirst.slice(i + 1)) {
      const mixture = mixtureOf(dense, light, low, high);
      if (mixture) found.push(mixture);
    }
  }
  return found;
}

function mixtureOf(dense: string, light: string, low: number, high: number): BinaryMixture | null {
  const [top, bottom] = [componentDensity(dense).gPerCm3, componentDensity(light).gPerCm3];
  if (bottom > high || bottom === top) return null;
  const from = low <= bottom ? 0 : shareAt(dense, light, low);
  const to = high >= top ? 1 : shareAt(dense, light, high);
  const share = [Math.max(from, leastShare), Math.min(to, 1 - leastShare)] as const;
  if (!(share[0] <= share[1])) return null;
  const known = knownByPair.get([dense, light].sort().join("+")) ?? null;
  return {
    kind: "mixture",
    id: `mix-${dense.toLowerCase()}-${light.toLowerCase()}`,
    name: `${known?.name ?? `${dense} with ${light}`} (${percents(share)} ${dense})`,
    pair: [dense, light],
    share,
    likelihood: known?.likelihood ?? "rare",
    known,
  };
}

function percents([low, high]: readonly [number, number]): string {
  const [a, b] = [(low * 100).toFixed(1), (high * 100).toFixed(1)];
  return a === b ? `${a} %` : `${a} to ${b} %`;
}
