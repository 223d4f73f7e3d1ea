import type { Locale } from "../../../views/messages/language.ts";
import { tellValue } from "../../../views/messages/tell.ts";
import { called } from "../../metals/called.ts";
import type { Library } from "../../metals/library.ts";
import type { MetalGroup } from "../../station/bench-settings.ts";
import { claimsOf, metalBands } from "../../station/metal-bands.ts";

/** What a piece can be said to be, by name in the page's language; what is mostly seen first. */
export function claimOptions(
  library: Library,
  locale: Locale,
  mostly: MetalGroup = "any",
): { id: string; name: string }[] {
  return claimsOf(metalBands(library, mostly)).map(({ id }) => ({
    id,
    name: tellValue(called(library.metal(id)), locale),
  }));
}
