import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Locale } from "./language.ts";
import { type Tell, tellerOf } from "./tell.ts";

const Spoken = createContext<Locale>("en");

/** Around a page or a part of one: the language everything inside is drawn in. */
export const Speaking = Spoken.Provider;

/** The language the part is drawn in. */
export function useLocale(): Locale {
  return useContext(Spoken);
}

/** Gives the words of a code in the language the part is drawn in. */
export function useTell(): Tell {
  return tellerOf(useLocale());
}
