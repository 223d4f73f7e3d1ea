import type { ComponentChildren } from "preact";
import type { Message } from "../calibration/message.ts";
import { useLocale } from "./messages/spoken.ts";
import { tell } from "./messages/tell.ts";
import { toldIn } from "./words/told.ts";

/** Something told to a person: a message, or a sentence as an entry of earlier versions holds it. */
export type Told = Message | string;

/**
 * A message in the page's language. What only exists in English is marked as English, so that a screen reader does not
 * read it with German sounds.
 */
export function Told({ says }: { says: Told }): ComponentChildren {
  const locale = useLocale();
  if (typeof says !== "string") return tell(says, locale);
  const there = toldIn(says, locale);
  return there === undefined ? <span lang="en">{says}</span> : there;
}
