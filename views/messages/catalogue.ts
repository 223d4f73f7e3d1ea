import { keysOf } from "../../calibration/keyed.ts";
import type { Code } from "../../calibration/message.ts";
import de from "./de.json" with { type: "json" };
import en from "./en.json" with { type: "json" };
import es from "./es.json" with { type: "json" };
import type { Locale } from "./language.ts";
import { compile, type Text } from "./text.ts";

const texts: Record<Locale, Readonly<Record<string, string>>> = { en, de, es };

const compiled = new Map<string, Text>();

/** The text of a code, compiled on first use; undefined when the catalogue does not have it. */
export function textOf(code: string, locale: Locale): Text | undefined {
  const known = compiled.get(`${locale} ${code}`);
  if (known) return known;
  const text = texts[locale][code];
  if (text === undefined) return undefined;
  const made = compile(text, locale);
  compiled.set(`${locale} ${code}`, made);
  return made;
}

/** Every code of the English catalogue, in its order. */
export const codes = keysOf(en);

/** True for a key of the catalogues: for codes that come out of a file. */
export function isCode(text: string): text is Code {
  return Object.hasOwn(en, text);
}
