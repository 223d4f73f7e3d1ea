import { reasonOf } from "../../calibration/reason.ts";
import { type Locale, locales } from "./language.ts";
import { compile, type Text } from "./text.ts";

/** A catalogue that cannot be used: `message` names the file, the line, the key, what is wrong and what to do. */
export class BadCatalogue extends Error {}

/** The text of each catalogue's file. */
export type CatalogueFiles = Readonly<Record<Locale, string>>;

/**
 * Reads every text of every catalogue, as written in its file. Throws BadCatalogue when a file or a text cannot be read,
 * when a key stands twice, is missing or is not in en.json, or when a text takes other parameters than the English one.
 */
export function checkCatalogues(files: CatalogueFiles): void {
  const english = textsOf(files.en, "en");
  for (const locale of locales) {
    const own = locale === "en" ? english : textsOf(files[locale], locale);
    for (const key of own.keys())
      if (!english.has(key))
        throw bad(files, locale, key, "it is not in en.json. Remove it, or add it there.");
    for (const [key, { uses }] of english) {
      const text = own.get(key);
      if (!text) throw bad(files, "en", key, `${locale}.json lacks this key. Add it there with its text.`);
      const missing = [...uses.keys()].find((name) => !text.uses.has(name));
      if (missing !== undefined)
        throw bad(files, locale, key, `the text lacks the parameter {${missing}} of en.json. Add it.`);
      const strange = [...text.uses.keys()].find((name) => !uses.has(name));
      if (strange !== undefined)
        throw bad(
          files,
          locale,
          key,
          `en.json has no parameter {${strange}} here. Remove it, or add it there.`,
        );
    }
  }
}

function textsOf(file: string, locale: Locale): Map<string, Text> {
  const texts = new Map<string, Text>();
  const twice = keysTwiceIn(file);
  for (const [key, text] of Object.entries(parsed(file, locale))) {
    const files = { [locale]: file };
    if (typeof text !== "string") throw bad(files, locale, key, "its text is not between quotation marks.");
    if (twice.has(key)) throw bad(files, locale, key, "it stands twice. Remove one of the two.");
    try {
      texts.set(key, compile(text, locale));
    } catch (error) {
      throw bad(files, locale, key, `its text cannot be read (${reasonOf(error)}). Look at its braces.`);
    }
  }
  return texts;
}

function parsed(file: string, locale: Locale): Record<string, unknown> {
  try {
    return JSON.parse(file) as Record<string, unknown>;
  } catch (error) {
    const reason = reasonOf(error);
    const position = Number(/position (\d+)/.exec(reason)?.[1] ?? file.length);
    const before = file.slice(0, position).split("\n");
    const [, key] = before.findLast((line) => keyIn.test(line))?.match(keyIn) ?? [];
    throw new BadCatalogue(
      `views/messages/${locale}.json, line ${before.length}: this is not JSON (${reason}). Look at the comma and the quotation marks there${key === undefined ? "" : `, near the key "${key}"`}.`,
    );
  }
}

function keysTwiceIn(file: string): Set<string> {
  const keys = file.split("\n").flatMap((line) => keyIn.exec(line)?.[1] ?? []);
  const seen = new Set<string>();
  return new Set(keys.filter((key) => seen.size === seen.add(key).size));
}

const keyIn = /^\s*"([^"]+)":/;

/** Lines of a file that begin with the key, counted from 1. */
function linesOf(file: string, key: string): number[] {
  const start = `${JSON.stringify(key)}:`;
  return file.split("\n").flatMap((line, place) => (line.trimStart().startsWith(start) ? [place + 1] : []));
}

function bad(files: Partial<CatalogueFiles>, locale: Locale, key: string, why: string): BadCatalogue {
  const line = linesOf(files[locale] ?? "", key).at(-1) ?? 1;
  return new BadCatalogue(`views/messages/${locale}.json, line ${line}, key "${key}": ${why}`);
}
