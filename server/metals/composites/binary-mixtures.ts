import { builtIn, type Library } from "../library.ts";
import type { Likelihood } from "../metal.ts";
import { type KnownPair, knownPairs } from "./known-pairs.ts";
import { component, components, type MixturePart, ownParts, shareOfPart } from "./mixture-part.ts";

/** A density interval in g/cm³ at 20 °C. */
export type DensityInterval = readonly [low: number, high: number];

/** Two components that reach a density interval together. */
export interface BinaryMixture {
  kind: "mixture";
  id: string;
  /** the denser first */
  parts: readonly [MixturePart, MixturePart];
  /** mass fraction of the first component, lowest and highest */
  share: readonly [number, number];
  likelihood: Likelihood;
  known: KnownPair | null;
}

/** The same of two components by their symbols; see shareOfPart. */
export function shareAt(a: string, b: string, gPerCm3: number): number {
  return shareOfPart(component(a), component(b), gPerCm3);
}

/** The known pairs, the denser component first. */
const knownOnes = knownPairs.map((known) => {
  const [a, b] = known.pair;
  const [dense, light] = [component(a), component(b)].sort((x, y) => y.gPerCm3 - x.gPerCm3);
  return { dense: dense!, light: light!, known };
});
const knownByPair = new Map(knownOnes.map(({ dense, light, known }) => [mixtureId(dense, light), known]));
/** A share nearer to an end than this is the pure metal, and no mixture. */
const leastShare = 0.002;

/** The pairs somebody is known to make that reach the interval at some share. */
export function knownMixtures([low, high]: DensityInterval): BinaryMixture[] {
  return knownOnes.flatMap(({ dense, light }) => mixtureOf(dense, light, low, high) ?? []);
}

/**
 * Every pair of components that reaches the interval at some share, in no particular order; an owner's metals in the
 * library are paired with every component and with each other.
 */
export function binaryMixtures([low, high]: DensityInterval, library: Library = builtIn): BinaryMixture[] {
  const own = ownParts(library);
  const parts = own.length === 0 ? components : [...own, ...components].sort((a, b) => b.gPerCm3 - a.gPerCm3);
  const found: BinaryMixture[] = [];
  for (const [i, dense] of parts.entries()) {
    if (dense.gPerCm3 < low) break;
    for (const light of parts.slice(i + 1)) {
      const mixture = mixtureOf(dense, light, low, high);
      if (mixture) found.push(mixture);
    }
  }
  return found;
}

function mixtureOf(dense: MixturePart, light: MixturePart, low: number, high: number): BinaryMixture | null {
  const [top, bottom] = [dense.gPerCm3, light.gPerCm3];
  if (bottom > high || bottom === top) return null;
  const from = low <= bottom ? 0 : shareOfPart(dense, light, low);
  const to = high >= top ? 1 : shareOfPart(dense, light, high);
  const share = [Math.max(from, leastShare), Math.min(to, 1 - leastShare)] as const;
  if (!(share[0] <= share[1])) return null;
  const id = mixtureId(dense, light);
  const known = knownByPair.get(id) ?? null;
  return {
    kind: "mixture",
    id,
    parts: [dense, light],
    share,
    likelihood: known?.likelihood ?? "rare",
    known,
  };
}

/** The id a mixture of two goes by, whatever its shares. */
function mixtureId(dense: MixturePart, light: MixturePart): string {
  return `mix-${dense.id.toLowerCase()}-${light.id.toLowerCase()}`;
}
