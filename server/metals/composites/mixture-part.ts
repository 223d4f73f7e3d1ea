import { type Message, message, type Param } from "../../../calibration/message.ts";
import { called } from "../called.ts";
import { componentDensity, componentSymbols } from "../component-density.ts";
import { excessTerm } from "../excess-terms.ts";
import type { Library } from "../library.ts";
import type { Magnetism, Metal } from "../metal.ts";
import type { MassFractions } from "../mixture.ts";
import type { KnownPair } from "./known-pairs.ts";

/** What a mixture of two is made of: a component such as copper, or a metal of the owner's. */
export interface MixturePart {
  /** "Cu", or the id of the owner's metal */
  id: string;
  called: Param;
  gPerCm3: number;
  /** what it holds, as mass fractions of elements */
  fractions: MassFractions;
  magnetism: Magnetism;
}

const pulled = ["Fe", "Ni", "Co"];

function componentPart(symbol: string): MixturePart {
  return {
    id: symbol,
    called: componentDensity(symbol).called,
    gPerCm3: componentDensity(symbol).gPerCm3,
    fractions: { [symbol]: 1 },
    magnetism: pulled.includes(symbol) ? "weak" : "none",
  };
}

/** Every component a mixture may be made of, the densest first. */
export const components: readonly MixturePart[] = componentSymbols
  .map(componentPart)
  .sort((a, b) => b.gPerCm3 - a.gPerCm3);

const bySymbol = new Map(components.map((part) => [part.id, part]));

/** The component under its symbol. Throws RangeError for an unknown one, as componentDensity does. */
export function component(symbol: string): MixturePart {
  return bySymbol.get(symbol) ?? componentPart(symbol);
}

/** The owner's metals as parts: their own densities and what they hold. */
export function ownParts({ metals }: Library): MixturePart[] {
  return metals.filter(({ family }) => family === "own").map(ownPart);
}

function ownPart(metal: Metal): MixturePart {
  const { id, densityGPerCm3, composition, magnetism } = metal;
  const fractions = Object.fromEntries(Object.entries(composition).map(([of, [nominal]]) => [of, nominal]));
  return { id, called: called(metal), gPerCm3: densityGPerCm3.nominal, fractions, magnetism };
}

/**
 * Mass fraction of a in a mixture with b of a density in g/cm³: volumes add, with the pair's excess term if it has one,
 * v = v_b + (v_a − v_b + B)·w − B·w². May fall outside 0…1. An owner's metal has no excess term of its own.
 */
export function shareOfPart(a: MixturePart, b: MixturePart, gPerCm3: number): number {
  const [va, vb] = [1 / a.gPerCm3, 1 / b.gPerCm3];
  const excess = excessTerm(a.id, b.id)?.bCm3PerG ?? 0;
  const slope = va - vb + excess;
  const wanted = 1 / gPerCm3 - vb;
  const root = Math.sqrt(Math.max(0, slope ** 2 - 4 * excess * wanted));
  return (2 * wanted) / (slope + Math.sign(slope) * root);
}

/** Density in g/cm³ of a mixture that holds this mass fraction of a; the same law as shareOfPart. */
export function densityOfMixture(a: MixturePart, b: MixturePart, share: number): number {
  const excess = excessTerm(a.id, b.id)?.bCm3PerG ?? 0;
  return 1 / (share / a.gPerCm3 + (1 - share) / b.gPerCm3 + excess * share * (1 - share));
}

/** Mass fractions of the elements in a mixture that holds this share of a, the rest being b. */
export function fractionsOf(a: MixturePart, b: MixturePart, share: number): MassFractions {
  const mixed: Record<string, number> = {};
  for (const [part, of] of [
    [a, share],
    [b, 1 - share],
  ] as const)
    for (const [symbol, w] of Object.entries(part.fractions)) mixed[symbol] = (mixed[symbol] ?? 0) + of * w;
  return mixed;
}

/** The name of a mixture whatever its shares: that of the known pair, or of its two parts, the denser first. */
export function calledMixture(
  [dense, light]: readonly [MixturePart, MixturePart],
  known: KnownPair | null | undefined,
): Message {
  return known?.called ?? message("composite.mixture", { dense: dense.called, light: light.called });
}
