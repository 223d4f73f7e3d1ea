import type { ComponentChildren } from "preact";
import type { Message } from "../calibration/message.ts";
import type { Locale } from "./messages/language.ts";
import { useLocale } from "./messages/spoken.ts";
import { tell } from "./messages/tell.ts";

/** Something told to a person: a message, or a sentence as an entry of earlier versions holds it. */
export type Sentence = Message | string;

/**
 * A message in the page's language. A sentence of an earlier version is shown as it was written: in English, and marked
 * so, that a screen reader does not read it with the sounds of another language.
 */
export function Sentence({ says }: { says: Sentence }): ComponentChildren {
  const locale = useLocale();
  if (typeof says !== "string") return tell(says, locale);
  return locale === "en" ? says : <span lang="en">{says}</span>;
}

/** The same as text, for an attribute. */
export function sentenceText(says: Sentence, locale: Locale): string {
  return typeof says === "string" ? says : tell(says, locale);
}

/** Marks an element with the code of what it tells, for programs that read the page; nothing for a sentence. */
export function codeMark(says: Sentence): { "data-code"?: string } {
  return typeof says === "string" ? {} : { "data-code": says.code };
}
