import { type Code, isMessage, type Message, type Param, type Params } from "../../calibration/message.ts";
import { inLocale } from "../numbers.ts";
import { isCode, textOf } from "./catalogue.ts";
import type { Locale } from "./language.ts";
import type { Text } from "./text.ts";

/** The words of a message in a language. A code that no catalogue has is shown as itself. */
export function tell(message: Message, locale: Locale): string {
  return worded(message, locale, false);
}

/** `within`: the words stand inside a sentence, not at its start. */
function worded({ code, params = {} }: Message, locale: Locale, within: boolean): string {
  const text = textOf(code, locale);
  if (!text) return code;
  const words = text.fill(valuesFor(text, params, locale, within));
  return within && code.startsWith("composite.mix-") ? lowered(words, locale) : words;
}

/** Gives the words of a code in one language. */
export type Tell = (code: Code, params?: Params) => string;

/** `tell` for one language. */
export function tellerOf(locale: Locale): Tell {
  return (code, params) => tell({ code, ...(params && { params }) }, locale);
}

/** One value in the language's manner, as it stands alone. */
export function tellValue(value: Param, locale: Locale): string {
  return valueTold(value, locale, false);
}

function valueTold(value: Param, locale: Locale, within: boolean): string {
  if (typeof value === "string") return value;
  if (typeof value === "number") return numberIn(value, locale);
  if ("code" in value) return worded(value, locale, within);
  if ("decimal" in value) return inLocale(value.decimal, locale);
  if ("metal" in value) return metalName(value.metal, locale, within, value.name);
  return "anyOf" in value
    ? list(value.anyOf, "disjunction", locale, within)
    : list(value, "conjunction", locale, within);
}

/** Name of a metal in a language; an owner's own metal has the name that was typed. */
function metalName(id: string, locale: Locale, within: boolean, own?: string): string {
  const name = own ?? tellId("metal", id, locale);
  return within && own === undefined ? lowered(shortName(name), locale) : name;
}

/** A name without what its catalogue adds in brackets: inside a sentence and beside a bar it is told without. */
export function shortName(name: string): string {
  return name.replace(/ \(.*\)$/, "");
}

/** A name as it stands inside a sentence: German keeps its capital. */
function lowered(name: string, locale: Locale): string {
  return locale !== "de" && /^\p{Lu}\p{Ll}/u.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name;
}

/** A metal of a library by its id; an owner's own metal, or one that the catalogue no longer has, by its name. */
export function metalTold({ id, name }: { id: string; name: string }, locale: Locale): string {
  return isCode(`metal.${id}`) ? tellId("metal", id, locale) : name;
}

/** The words of an id under a stem of codes; the id itself when the catalogue has none, such as one out of an older entry. */
export function tellId(stem: string, id: string, locale: Locale): string {
  const code = `${stem}.${id}`;
  return isCode(code) ? tell({ code }, locale) : id;
}

function valuesFor(
  text: Text,
  params: Params,
  locale: Locale,
  within: boolean,
): Record<string, string | number> {
  return Object.fromEntries(
    [...text.uses].map(([name, use]) => {
      const value = params[name];
      if (value === undefined) return [name, `{${name}}`];
      if (use === "number") return [name, numberOf(value)];
      if (use === "select") return [name, String(value)];
      const words = valueTold(value, locale, within || !text.begins.has(name));
      return [name, text.ends.has(name) ? withoutStop(words) : words];
    }),
  );
}

/** One full stop ends a sentence, whatever stands before it; dots that stand for more are left. */
const withoutStop = (words: string) => words.replace(/(?<!\.)\.$/, "");

const numberOf = (value: Param): number =>
  typeof value === "object" && "decimal" in value ? Number(value.decimal) : Number(value);

const plain = new Map<Locale, Intl.NumberFormat>();

function numberIn(value: number, locale: Locale): string {
  let format = plain.get(locale);
  if (!format) {
    format = new Intl.NumberFormat(locale, { maximumSignificantDigits: 15, useGrouping: false });
    plain.set(locale, format);
  }
  return format.format(value).replace(/^-/, "−");
}

function list(
  values: readonly Param[],
  type: "conjunction" | "disjunction",
  locale: Locale,
  within: boolean,
): string {
  const words = values.map((value, place) => {
    const one = valueTold(value, locale, within || place > 0);
    return isMessage(value) ? withoutStop(one) : one;
  });
  return new Intl.ListFormat(locale, { type }).format(words);
}
