import { componentSymbols } from "../alloys/component-density.ts";
import type { Library } from "../alloys/library.ts";
import type { Metal } from "../alloys/metal.ts";
import { knownPairs } from "./known-pairs.ts";

/** A made-up piece as its id names it: what it is put together from, whatever the shares. */
export type NamedComposite =
  | { kind: "mixture"; pair: readonly [string, string]; name: string; source: string }
  | { kind: "core-and-skin"; core: Metal; skin: Metal; name: string; source: string };

/**
 * What an id of a mixture ("mix-w-cu") or of a core under a skin ("core-w-pure-skin-el-au") stands for; undefined when it
 * stands for none. An id says no shares: those follow from the density that was measured.
 */
export function compositeById(id: string, library: Library): NamedComposite | undefined {
  return mixtureById(id) ?? coredById(id, library);
}

function mixtureById(id: string): NamedComposite | undefined {
  const [, a, b] = /^mix-([a-z]+)-([a-z]+)$/.exec(id) ?? [];
  const [dense, light] = [a, b].map((lower) => componentSymbols.find((s) => s.toLowerCase() === lower));
  if (dense === undefined || light === undefined) return undefined;
  const known = knownPairs.find(({ pair }) => pair.includes(dense) && pair.includes(light));
  return {
    kind: "mixture",
    pair: [dense, light],
    name: known?.name ?? `${dense} with ${light}`,
    source: known?.source ?? "mixture law",
  };
}

function coredById(id: string, library: Library): NamedComposite | undefined {
  const [, core, skin] = /^core-(.+)-skin-(.+)$/.exec(id) ?? [];
  if (core === undefined || skin === undefined || !library.has(core) || !library.has(skin)) return undefined;
  const [inside, outside] = [library.metal(core), library.metal(skin)];
  return {
    kind: "core-and-skin",
    core: inside,
    skin: outside,
    name: `${inside.name} under ${outside.name}`,
    source: "computed from the volumes of core and skin",
  };
}
