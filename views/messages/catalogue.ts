import { IntlMessageFormat } from "intl-messageformat";
import type { Code } from "../../calibration/message.ts";
import de from "./de.json" with { type: "json" };
import en from "./en.json" with { type: "json" };
import es from "./es.json" with { type: "json" };
import { type Locale, locales } from "./language.ts";

const texts: Record<Locale, Readonly<Record<string, string>>> = { en, de, es };

/** How a parameter is used in a text: shown as it comes, or as a number that a plural or a format needs. */
export type Use = "shown" | "number" | "select";

/** One text of a catalogue, ready to be filled in. */
export interface Text {
  /** the parameters it takes, with their use */
  uses: ReadonlyMap<string, Use>;
  /** Fills the values in; every parameter must be there. */
  fill(values: Readonly<Record<string, string | number>>): string;
}

const compiled: Record<Locale, Map<string, Text>> = { en: new Map(), de: new Map(), es: new Map() };

/** The text of a code, compiled on first use; undefined when the catalogue does not have it. */
export function textOf(code: string, locale: Locale): Text | undefined {
  const known = compiled[locale].get(code);
  if (known) return known;
  const text = texts[locale][code];
  if (text === undefined) return undefined;
  const made = compile(text, code, locale);
  compiled[locale].set(code, made);
  return made;
}

/** Every code of the English catalogue, in its order. */
export const codes = Object.keys(en) as Code[];

/** True for a key of the catalogues: for codes that come out of a file. */
export function isCode(text: string): text is Code {
  return Object.hasOwn(en, text);
}

/**
 * Reads every text of every catalogue. Throws Error with file, key and reason when one cannot be read, is missing, or
 * takes other parameters than the English one.
 */
export function checkCatalogues(): void {
  for (const locale of locales) {
    const own = texts[locale];
    const unknown = Object.keys(own).find((key) => !Object.hasOwn(en, key));
    if (unknown !== undefined)
      throw new Error(
        `views/messages/${locale}.json: the key "${unknown}" is not in en.json. Remove it, or add it there.`,
      );
    for (const code of codes) {
      const text = textOf(code, locale);
      if (!text)
        throw new Error(`views/messages/${locale}.json: the key "${code}" is missing. Add it with its text.`);
      const missing = [...textOf(code, "en")!.uses.keys()].find((name) => !text.uses.has(name));
      const strange = [...text.uses.keys()].find((name) => !textOf(code, "en")!.uses.has(name));
      if (missing !== undefined || strange !== undefined)
        throw new Error(
          `views/messages/${locale}.json: "${code}" ${missing === undefined ? `has the parameter {${strange}} that en.json does not have` : `lacks the parameter {${missing}}`}.`,
        );
    }
  }
}

function compile(text: string, code: string, locale: Locale): Text {
  let format: IntlMessageFormat;
  try {
    // markup is no part of a text: "<" stands for itself
    format = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
  } catch (error) {
    throw new Error(
      `views/messages/${locale}.json: the text of "${code}" cannot be read (${(error as Error).message}).`,
    );
  }
  const uses = new Map<string, Use>();
  collect(format.getAst(), uses);
  return { uses, fill: (values) => String(format.format(values)) };
}

type Ast = ReturnType<IntlMessageFormat["getAst"]>;

/** Element types of the parser: 1 argument, 2 number, 3 date, 4 time, 5 select, 6 plural. */
function collect(elements: Ast, uses: Map<string, Use>): void {
  for (const element of elements) {
    if (element.type === 1) uses.set(element.value, uses.get(element.value) ?? "shown");
    if (element.type === 2 || element.type === 6) uses.set(element.value, "number");
    if (element.type === 5) uses.set(element.value, "select");
    if (element.type === 5 || element.type === 6)
      for (const option of Object.values(element.options)) collect(option.value, uses);
  }
}
