import type { ComponentChildren } from "preact";
import { useLocale } from "./words/spoken.ts";
import { toldIn } from "./words/told.ts";

/**
 * A sentence of the bench in the page's language. What only exists in English is marked as English, so that a screen
 * reader does not read it with German sounds.
 */
export function Told({ says }: { says: string }): ComponentChildren {
  const locale = useLocale();
  const there = toldIn(says, locale);
  return there === undefined ? <span lang="en">{says}</span> : there;
}
