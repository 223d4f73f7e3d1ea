import type { Library } from "./library.ts";

/** What somebody wrote as a claim was understood to be: one metal here, a few it can mean, or none. */
export type TypedClaim = { metal: string } | { meanings: readonly string[] };

/** Symbols by the words for them in English, German and Spanish. */
const elements: Readonly<Record<string, string>> = {
  ...{ gold: "au", au: "au", oro: "au" },
  ...{ silver: "ag", silber: "ag", ag: "ag", plata: "ag" },
  ...{ platinum: "pt", platin: "pt", pt: "pt", platino: "pt" },
  ...{ palladium: "pd", pd: "pd", paladio: "pd" },
};

/** The stamped fineness of each carat, parts per thousand [common practice; ISO 9202 from memory]. */
const ofCarat: Readonly<Record<string, readonly number[]>> = {
  ...{ 8: [333], 9: [375], 10: [417], 12: [500], 14: [585], 15: [625], 16: [667], 18: [750] },
  ...{ 20: [833], 21: [875], 22: [916], 23: [958], 24: [999, 9999] },
};

const caratWords = /^(ct|kt|k|carat|karat|quilates|quilate)$/;

/** Beside gold of 20 ct a silver of this fineness is stamped, which is no metal here [common practice]. */
const openAlone = 833;

/** Words that say nothing of their own. */
const silent: ReadonlySet<string> = new Set(["de", "fein", "fine", "fino", "fina", "er", "fineness", "ley"]);

/** Element and fineness of a metal that a stamp can name: au-585, and fine gold of 999.9 parts. */
function stamped(id: string): { element: string; permille: number } | undefined {
  if (id === "au-24") return { element: "au", permille: 9999 };
  const [, element, permille] = /^(au|ag|pt|pd)-(\d{3,4})$/.exec(id) ?? [];
  return element === undefined ? undefined : { element, permille: Number(permille) };
}

/**
 * Reads a claim as people write it: an id, a name that `names` gives for a metal, or a stamp such as "585", "14 ct" and
 * "Gold 750 (18 ct)". A fineness of more than one metal gives all of them; so do parts that contradict each other. A
 * word that is not understood is never left out: then nothing is meant. Pure.
 */
export function typedClaim(
  typed: string,
  library: Library,
  names: (id: string) => readonly string[],
): TypedClaim {
  const wanted = plain(typed);
  if (library.has(wanted)) return { metal: wanted };
  // the word alone tells no fineness; it is also the name of the element
  if (wanted in elements) return { meanings: [] };
  const byName = library.metals.filter(({ id }) => names(id).some((name) => plain(name) === wanted));
  if (byName.length > 0) return oneOf(byName.map(({ id }) => id));
  const said = stampOf(wanted);
  if (!said || (said.element === undefined && said.permilles.includes(openAlone))) return { meanings: [] };
  const ids = library.metals.flatMap(({ id }) => {
    const of = stamped(id);
    return of && said.permilles.includes(of.permille) && (said.element ?? of.element) === of.element
      ? [id]
      : [];
  });
  return oneOf(ids);
}

const oneOf = (ids: readonly string[]): TypedClaim =>
  ids.length === 1 ? { metal: ids[0]! } : { meanings: ids };

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, " ");

/** Element and finenesses of a stamp; undefined where a word is left that nobody understands. */
function stampOf(text: string): { element?: string; permilles: number[] } | undefined {
  const words = text
    .replace(/\b999[.,]9\b/g, "9999")
    .replace(/(\d)\s*(‰|\/\s*1000)/g, "$1")
    .split(/[\s()[\],;/·-]+|(?<=\d)(?=\p{L})|(?<=\p{L})(?=\d)/u)
    .filter((word) => word !== "" && !silent.has(word));
  const found: { element?: string; permilles: number[] } = { permilles: [] };
  for (const [at, word] of words.entries()) {
    const element = word === "sterling" ? "ag" : elements[word];
    const carat = caratWords.test(words[at + 1] ?? "") ? ofCarat[word] : undefined;
    if (element !== undefined) {
      if (found.element !== undefined && found.element !== element) return undefined;
      found.element = element;
      if (word === "sterling") found.permilles.push(925);
    } else if (carat !== undefined) {
      if (found.element !== undefined && found.element !== "au") return undefined;
      found.element = "au";
      found.permilles.push(...carat);
    } else if (caratWords.test(word) && at > 0) continue;
    else if (/^\d{3,4}$/.test(word)) found.permilles.push(Number(word));
    else return undefined;
  }
  return found.permilles.length === 0 ? undefined : { ...found, permilles: [...new Set(found.permilles)] };
}
