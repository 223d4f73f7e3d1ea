import { codes, textOf } from "../messages/catalogue.ts";
import type { Locale } from "../messages/language.ts";
import { germanBook } from "./de/told/index.ts";
import type { ToldPair } from "./told-pair.ts";

interface Template {
  pattern: RegExp;
  slots: readonly string[];
  /** slots that stand between quotation marks hold what somebody typed and stay as they are */
  quoted: ReadonlySet<string>;
  other: string;
  /** letters outside the slots; the template that fixes most letters is tried first */
  fixed: number;
}

const slot = /\{(\w+)\}/g;
const quotedSlot = /["“]\{(\w+)\}["”]/g;

/** Text as a regular expression that finds just it. */
const literally = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

const number = "([−-]?\\d[\\d.,]*)";

/** What a slot may hold, as the source of a regular expression; between quotation marks also nothing. */
function heldBy(slot: string, value: string, quoted: boolean): string {
  if (/^n\d*$/.test(slot)) return number;
  if (slot === "list") return "(.+?)";
  return quoted ? `(${value}*?)` : `(${value}+?)`;
}

/** `value`: what a slot may hold, as the source of a regular expression. */
function templateOf([english, other]: ToldPair, value: string): Template {
  const slots = [...english.matchAll(slot)].map(([, name]) => name!);
  const quoted = new Set([...english.matchAll(quotedSlot)].map(([, name]) => name!));
  const literal = english.split(slot).filter((_, place) => place % 2 === 0);
  const pattern = literal
    .map(literally)
    .flatMap((text, place) =>
      place === 0 ? [text] : [heldBy(slots[place - 1]!, value, quoted.has(slots[place - 1]!)), text],
    )
    .join("");
  return {
    pattern: new RegExp(`^${pattern}$`),
    slots,
    quoted,
    other,
    fixed: literal.join("").length,
  };
}

/** Pairs ready to be looked up: whole sentences first, then templates. */
class Pairs {
  #whole: ReadonlyMap<string, string>;
  #templates: readonly Template[];

  constructor(pairs: readonly ToldPair[], value: string) {
    this.#whole = new Map(pairs.filter(([english]) => !english.includes("{")));
    this.#templates = pairs
      .filter(([english]) => english.includes("{"))
      .map((pair) => templateOf(pair, value))
      .sort((a, b) => b.fixed - a.fixed);
  }

  /** The other language's words for it, each value in a slot told by `value`; undefined when it is not here. */
  find(english: string, value: (text: string) => string): string | undefined {
    const whole = this.#whole.get(english);
    if (whole !== undefined) return whole;
    for (const { pattern, slots, quoted, other } of this.#templates) {
      const found = pattern.exec(english);
      if (!found) continue;
      const values = new Map(slots.map((name, place) => [name, found[place + 1] ?? ""]));
      return other.replace(slot, (_, name: string) => {
        const text = values.get(name) ?? "";
        return quoted.has(name) ? text : value(text);
      });
    }
    return undefined;
  }
}

/** Sentences, and the names that only stand inside them or by themselves: looking a name up never finds half a sentence. */
class Book {
  #sentences: Pairs;
  #names: Pairs;

  constructor({ sentences, names }: { sentences: readonly ToldPair[]; names: readonly ToldPair[] }) {
    this.#sentences = new Pairs(sentences, "[\\s\\S]");
    // a name ends where the next of a list begins
    this.#names = new Pairs(names, "(?:(?!, )[^;:])");
  }

  /** One sentence, or undefined when the book does not have it. */
  sentence(english: string): string | undefined {
    return this.#sentences.find(english, (text) => this.value(text));
  }

  #name(english: string): string | undefined {
    return (
      this.#names.find(english, (text) => this.value(text)) ??
      this.sentence(english) ??
      this.#insideAnother(english)
    );
  }

  /** A sentence that stands inside another one begins with a small letter there. */
  #insideAnother(english: string): string | undefined {
    const [first = "", ...rest] = english;
    const told = /[a-z]/.test(first) ? this.sentence([first.toUpperCase(), ...rest].join("")) : undefined;
    return told && `${told.charAt(0).toLowerCase()}${told.slice(1)}`;
  }

  /** A value inside a sentence: itself told when the book has it, each part of a list, decimals with a comma. */
  value(english: string): string {
    const told = this.#name(english);
    if (told !== undefined) return told;
    const parts = english.split(/(, or |, and |, | and | or |; )/);
    return parts.length > 1 ? this.#list(parts) : withComma(english);
  }

  /** The parts of a list and what joins them; a name that itself holds a comma is found first. */
  #list(parts: readonly string[]): string {
    let told = "";
    for (let start = 0; start < parts.length; ) {
      let end = parts.length;
      while (end > start + 1 && this.#name(parts.slice(start, end).join("")) === undefined) end--;
      const part = parts.slice(start, end).join("");
      told += joints.get(part) ?? this.#name(part) ?? withComma(part);
      start = end;
    }
    return told;
  }

  /** A text of one sentence or several; undefined when one of them is missing. */
  text(english: string): string | undefined {
    return this.#runs(english.split(/(?<=[.?!:]) (?=\S)/));
  }

  /** The shortest run of sentences that the book knows as one, then the rest. */
  #runs(sentences: readonly string[]): string | undefined {
    if (sentences.length === 0) return "";
    for (let end = 1; end <= sentences.length; end++) {
      const run = this.sentence(sentences.slice(0, end).join(" "));
      const rest = run === undefined ? undefined : this.#runs(sentences.slice(end));
      if (run !== undefined && rest !== undefined) return rest === "" ? run : `${run} ${rest}`;
    }
    return undefined;
  }
}

const joints = new Map([
  [", ", ", "],
  [" and ", " und "],
  [" or ", " oder "],
  [", and ", " und "],
  [", or ", " oder "],
]);

/** Decimal points of free-standing numbers as commas; versions, dates and addresses keep theirs. */
function withComma(text: string): string {
  return text
    .replace(/(?<![\w.])([-−±]?\d+)\.(\d+)(?![\w.]*\.?\d)/g, "$1,$2")
    .replace(/(\d) to (?=\d)/g, "$1 bis ");
}

const books: Partial<Record<Locale, Book>> = { de: new Book(germanBook) };

/** A value that nobody types, to see what a sentence of the page's words says around it. */
const anything = "\uFFFC";

/** The catalogue's texts, whole or as what they say around their values: a sentence may come from there already. */
function ownWordsOf(locale: Locale): RegExp[] {
  return codes.flatMap((code): RegExp[] => {
    const text = textOf(code, locale)!;
    const kept = [...text.uses].map(([name, use]) => [name, use === "number" ? 2 : anything] as const);
    const said = text.fill(Object.fromEntries(kept));
    // "{name}: {value}" says nothing by which it could be known
    if (kept.length > 0 && (said.match(/\p{L}{2,}/gu) ?? []).length < 3) return [];
    return [new RegExp(`^${said.split(anything).map(literally).join("[\\s\\S]*")}$`)];
  });
}

const ownWords = new Map<Locale, RegExp[]>();

function isOwnWord(text: string, locale: Locale): boolean {
  const own = ownWords.get(locale) ?? ownWordsOf(locale);
  ownWords.set(locale, own);
  return own.some((pattern) => pattern.test(text));
}

/** The sentence in the language, or undefined when only its English is there. */
export function toldIn(english: string, locale: Locale): string | undefined {
  if (locale === "en") return english;
  return books[locale]?.text(english) ?? (isOwnWord(english, locale) ? english : undefined);
}

/** The sentence in the language; in English when the language does not have it. */
export function told(english: string, locale: Locale): string {
  return toldIn(english, locale) ?? english;
}

/** A name, a unit or a short label inside a page: told when the book has it, its decimals in the language's manner. */
export function toldValue(english: string, locale: Locale): string {
  return locale === "en" ? english : (books[locale]?.value(english) ?? english);
}
