import type catalogue from "../views/messages/en.json";

/** The code of a message: a key of the English catalogue. Only its type is known here, never its text. */
export type Code = keyof typeof catalogue;

/** What is told to a person, without words: the catalogues hold the words of each code in each language. */
export interface Message {
  readonly code: Code;
  readonly params?: Params;
}

/** Why something was done: what a person wrote, or a message where the program says it. */
export type Reason = Message | string;

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

/** The message alone of something that carries one, such as a refusal. */
export const messageOf = ({ code, params }: Message): Message => message(code, params);

/** True for a message that was kept or came in a file; a code of another version is shown as itself. */
export function isMessage(value: unknown): value is Message {
  if (!isObject(value) || typeof value.code !== "string") return false;
  const { params = {} } = value;
  return isObject(params) && Object.values(params).every(isParam);
}

function isParam(value: unknown): boolean {
  if (typeof value === "string" || typeof value === "number") return true;
  if (Array.isArray(value)) return value.every(isParam);
  if (!isObject(value)) return false;
  if ("decimal" in value) return typeof value.decimal === "string";
  if ("metal" in value) return typeof value.metal === "string";
  return "anyOf" in value ? Array.isArray(value.anyOf) && value.anyOf.every(isParam) : isMessage(value);
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
