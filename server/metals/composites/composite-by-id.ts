import type { Message, Param } from "../../../calibration/message.ts";
import { called, coreUnderSkin } from "../called.ts";
import type { Library } from "../library.ts";
import type { Metal } from "../metal.ts";
import { type KnownPair, knownPairs } from "./known-pairs.ts";
import { calledMixture, components, type MixturePart, ownParts } from "./mixture-part.ts";

/** A made-up piece as its id names it: what it is put together from, whatever the shares. */
export type NamedComposite =
  | {
      kind: "mixture";
      pair: readonly [MixturePart, MixturePart];
      called: Message;
      known: KnownPair | undefined;
    }
  | { kind: "core-and-skin"; core: Metal; skin: Metal; called: Message };

/**
 * What an id of a mixture ("mix-w-cu") or of a core under a skin ("core-w-pure-skin-el-au") stands for; undefined when it
 * stands for none. An id says no shares: those follow from the density that was measured.
 */
export function compositeById(id: string, library: Library): NamedComposite | undefined {
  return mixtureById(id, library) ?? coredById(id, library);
}

/** What stands under an id of a metal or of a made-up piece, for a message; an id that stands for none is shown as it is. */
export function calledById(id: string, library: Library): Param {
  return library.has(id) ? called(library.metal(id)) : (compositeById(id, library)?.called ?? id);
}

function mixtureById(id: string, library: Library): NamedComposite | undefined {
  const rest = /^mix-(.+)$/.exec(id)?.[1];
  if (rest === undefined) return undefined;
  const parts = [...components, ...ownParts(library)];
  const named = new Map(parts.map((part) => [part.id.toLowerCase(), part]));
  for (const [name, one] of named) {
    const other = rest.startsWith(`${name}-`) ? named.get(rest.slice(name.length + 1)) : undefined;
    if (!other) continue;
    const known = knownPairs.find(({ pair }) => pair.includes(one.id) && pair.includes(other.id));
    return {
      kind: "mixture",
      pair: [one, other],
      called: calledMixture([one, other], known),
      known,
    };
  }
  return undefined;
}

function coredById(id: string, library: Library): NamedComposite | undefined {
  const [, core, skin] = /^core-(.+)-skin-(.+)$/.exec(id) ?? [];
  if (core === undefined || skin === undefined || !library.has(core) || !library.has(skin)) return undefined;
  const [inside, outside] = [library.metal(core), library.metal(skin)];
  return {
    kind: "core-and-skin",
    core: inside,
    skin: outside,
    called: coreUnderSkin(inside, outside),
  };
}
