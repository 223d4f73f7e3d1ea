import { type Message, message, type Param } from "../../calibration/message.ts";
import type { Metal } from "./metal.ts";

/**
 * A metal as it stands in a message: by its id, an owner's own metal by the name that was typed, a made-up piece by what
 * it is put together from.
 */
export function called({ id, ownName, made }: Metal): Param {
  if (made) return made;
  return ownName === undefined ? { metal: id } : { metal: id, name: ownName };
}

/** The name of a core under an even skin. */
export function coreUnderSkin(core: Metal, skin: Metal): Message {
  return message("composite.core-under-skin", { core: called(core), skin: called(skin) });
}
