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
export function Sentence({ message }: { message: Sentence }): ComponentChildren {
  const locale = useLocale();
  if (typeof message !== "string") return tell(message, locale);
  return locale === "en" ? message : <span lang="en">{message}</span>;
}

/** The same as text, for an attribute. */
export function sentenceText(message: Sentence, locale: Locale): string {
  return typeof message === "string" ? message : tell(message, locale);
}

/** Marks an element with the code of what it tells, for programs that read the page; nothing for a sentence. */
export function codeMark(message: Sentence): { "data-code"?: string } {
  return typeof message === "string" ? {} : { "data-code": message.code };
}
