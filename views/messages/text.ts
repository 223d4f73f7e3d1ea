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
  /** Fills the values in; every parameter must be there. */
  fill(values: Readonly<Record<string, string | number>>): string;
}

/** A text in ICU MessageFormat, read. Throws SyntaxError when it cannot be read. */
export function compile(text: string, locale: Locale): Text {
  // markup is no part of a text: "<" stands for itself
  const format = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
  const uses = new Map<string, Use>();
  const begins = new Set<string>();
  collect(format.getAst(), uses, begins, true);
  return { uses, begins, fill: (values) => String(format.format(values)) };
}

type Ast = ReturnType<IntlMessageFormat["getAst"]>;

const endOfSentence = /[.!?…]\s*$/;

/** Element types of the parser: 0 literal, 1 argument, 2 number, 3 date, 4 time, 5 select, 6 plural. */
function collect(elements: Ast, uses: Map<string, Use>, begins: Set<string>, atStart: boolean): void {
  let starts = atStart;
  for (const element of elements) {
    if (element.type === 1) {
      uses.set(element.value, uses.get(element.value) ?? "shown");
      if (starts) begins.add(element.value);
    }
    if (element.type === 2 || element.type === 6) uses.set(element.value, "number");
    if (element.type === 5) uses.set(element.value, "select");
    if (element.type === 5 || element.type === 6)
      for (const option of Object.values(element.options)) collect(option.value, uses, begins, starts);
    starts = element.type === 0 && endOfSentence.test(element.value);
  }
}
