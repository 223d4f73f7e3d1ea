import { IntlMessageFormat } from "intl-messageformat";
import type { Locale } from "./language.ts";

/** How a parameter is used in a text: shown as it comes, as a number that a plural or a format needs, or to choose. */
export type Use = "shown" | "number" | "select";

/** One text of a catalogue, ready to be filled in. */
export interface Text {
  /** the parameters it takes, with their use */
  uses: ReadonlyMap<string, Use>;
  /** the parameters that somewhere begin a sentence or a line */
  begins: ReadonlySet<string>;
  /** the parameters with a full stop right behind them */
  ends: ReadonlySet<string>;
  /** Fills the values in; every parameter must be there. */
  fill(values: Readonly<Record<string, string | number>>): string;
}

/** A text in ICU MessageFormat, read. Throws SyntaxError when it cannot be read. */
export function compile(text: string, locale: Locale): Text {
  // markup is no part of a text: "<" stands for itself
  const format = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
  const uses = new Map<string, Use>();
  const begins = new Set<string>();
  const ends = new Set<string>();
  collect(format.getAst(), { uses, begins, ends }, true);
  return { uses, begins, ends, fill: (values) => String(format.format(values)) };
}

type Ast = ReturnType<IntlMessageFormat["getAst"]>;

const endOfSentence = /[.!?…]\s*$/;

interface Found {
  uses: Map<string, Use>;
  begins: Set<string>;
  ends: Set<string>;
}

/** Element types of the parser: 0 literal, 1 argument, 2 number, 3 date, 4 time, 5 select, 6 plural. */
function collect(elements: Ast, found: Found, atStart: boolean): void {
  const { uses, begins, ends } = found;
  let starts = atStart;
  for (const [place, element] of elements.entries()) {
    if (element.type === 1) {
      uses.set(element.value, uses.get(element.value) ?? "shown");
      if (starts) begins.add(element.value);
      const next = elements[place + 1];
      if (next?.type === 0 && next.value.startsWith(".")) ends.add(element.value);
    }
    if (element.type === 2 || element.type === 6) uses.set(element.value, "number");
    if (element.type === 5) uses.set(element.value, "select");
    if (element.type === 5 || element.type === 6)
      for (const option of Object.values(element.options)) collect(option.value, found, starts);
    starts = element.type === 0 && endOfSentence.test(element.value);
  }
}
