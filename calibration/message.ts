import type catalogue from "../views/messages/en.json";

/** The code of a message: a key of the English catalogue. Only its type is known here, never its text. */
export type Code = keyof typeof catalogue;

/** What is told to a person, without words: the catalogues hold the words of each code in each language. */
export interface Message {
  readonly code: Code;
  readonly params?: Params;
}

export type Params = Readonly<Record<string, Param>>;

/**
 * A value inside a message.
 * - text: typed or received by somebody, a name, a path, a ticket, a unit: shown as it is in every language;
 * - number: full precision; the message says how it is rounded, and without that up to 15 digits are shown;
 * - `decimal`: decimal text whose digits stay as they are ("31.10"); only the decimal mark follows the language;
 * - message: told in the language of the message around it;
 * - `metal`: id of a metal, shown by its name in the language; `name` is that of an owner's own metal, shown as typed;
 * - list: joined as "a, b and c"; `anyOf` as "a, b or c".
 */
export type Param =
  | string
  | number
  | Message
  | { readonly decimal: string }
  | { readonly metal: string; readonly name?: string }
  | { readonly anyOf: readonly Param[] }
  | readonly Param[];

/** A message of this code. */
export function message(code: Code, params?: Params): Message {
  return params === undefined ? { code } : { code, params };
}
