import { z } from "zod";
import { type Message, message, messageOf } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import type { DecimalMark, TypedNumber } from "../../../calibration/typed-number.ts";
import { type Asked, readQuantity } from "../../../calibration/typed-quantity.ts";
import type { MassUnit } from "../../../calibration/units.ts";
import { typedReading } from "../../weighing/typed-reading.ts";

type Quantity = Omit<Asked, "mark" | "unit"> & {
  unit?: string;
  /** what the entry is called, said before what is wrong with it */
  what?: Message;
  /** above the smallest right value, not at it */
  aboveZero?: true;
  whole?: true;
};

type Words = {
  what?: Message;
  /** told instead of "Nothing was typed" */
  missing?: Message;
  most?: number;
};

/** The entries that forms are put together from. Numbers come out as decimal text, whose last place tells the readability. */
export interface Entries {
  /** decimal text in the unit asked for */
  decimal(asked?: Quantity): z.ZodType<string>;
  /** the same where the entry may be empty: then undefined */
  maybeDecimal(asked?: Quantity): z.ZodType<string | undefined>;
  number(asked?: Quantity): z.ZodType<number>;
  maybeNumber(asked?: Quantity): z.ZodType<number | undefined>;
  /** a weight off a display in the unit of the list beside it; a load is not below zero, a zero may be */
  reading(unit: string, of?: "load" | "zero"): z.ZodType<{ text: string; unit: MassUnit }>;
  maybeReading(unit: string): z.ZodType<{ text: string; unit: MassUnit } | undefined>;
  /** trimmed text as it was typed, also none */
  typed(): z.ZodType<string>;
  /** text with every blank that was typed, also none: lines of a balance, a request to one */
  exact(): z.ZodType<string>;
  /** the same, undefined where the form has no such entry */
  ifSent(): z.ZodType<string | undefined>;
  /** one thing a line, without empty lines */
  lines(): z.ZodType<string[]>;
  /** the entries whose names begin so, by the rest of their names */
  named(prefix: string): z.ZodType<Record<string, string>>;
  /** trimmed text that must not be empty */
  text(words?: Words): z.ZodType<string>;
  maybeText(words?: Words): z.ZodType<string | undefined>;
  choice<const Of extends readonly string[]>(
    of: Of,
    words?: { wrong?: Message | ((typed: string) => Message); first?: Of[number] },
  ): z.ZodType<Of[number]>;
  /** a box: true when it was ticked */
  box(): z.ZodType<boolean>;
  /** a day of the calendar, 2026-03-02 */
  day(words?: Words): z.ZodType<string>;
  maybeDay(words?: Words): z.ZodType<string | undefined>;
}

/** Reads one trimmed entry, or gives why it goes back. */
type Read<T> = (typed: string) => { value: T } | { message: Message };

/** The entries of a page whose language writes this decimal mark. */
export function entriesFor(mark: DecimalMark): Entries {
  const decimal = (asked: Quantity = {}) => entry(asked.what, (typed) => quantity(typed, asked, mark));
  const maybeDecimal = (asked: Quantity = {}) =>
    entry(asked.what, (typed) => (typed === "" ? { value: undefined } : quantity(typed, asked, mark)));
  return {
    decimal,
    maybeDecimal,
    number: (asked) => decimal(asked).transform(Number),
    maybeNumber: (asked) =>
      maybeDecimal(asked).transform((text) => (text === undefined ? undefined : Number(text))),
    reading: (unit, of = "load") => entry(undefined, (typed) => readingOf(typed, unit, { mark, of })),
    maybeReading: (unit) =>
      entry(undefined, (typed) =>
        typed === "" ? { value: undefined } : readingOf(typed, unit, { mark, of: "load" }),
      ),
    typed: () => entry(undefined, (typed) => ({ value: typed })),
    exact: () => z.string().prefault(""),
    ifSent: () => z.string().trim().optional(),
    lines: () =>
      z
        .string()
        .prefault("")
        .transform((typed) => typed.split(/\r?\n/).flatMap((line) => line.trim() || [])),
    named: (prefix) => z.record(z.string(), z.unknown()).transform((all) => namedSo(all, prefix)),
    text: (words = {}) => entry(words.what, (typed) => wordsOf(typed, words)),
    maybeText: (words = {}) =>
      entry(words.what, (typed) => (typed === "" ? { value: undefined } : wordsOf(typed, words))),
    choice: (of, { wrong, first } = {}) =>
      entry(undefined, (typed) => {
        const value = typed === "" ? first : of.find((one) => one === typed);
        if (value !== undefined) return { value };
        const sentence = typeof wrong === "function" ? wrong(typed) : wrong;
        return { message: sentence ?? message("form.choice.not-offered", { typed }) };
      }),
    box: () =>
      z
        .unknown()
        .optional()
        .transform((value) => value !== undefined && value !== ""),
    day: (words = {}) => entry(words.what, (typed) => day(typed, words)),
    maybeDay: (words = {}) =>
      entry(words.what, (typed) => (typed === "" ? { value: undefined } : day(typed, words))),
  };
}

function namedSo(all: Readonly<Record<string, unknown>>, prefix: string): Record<string, string> {
  const named = Object.entries(all).flatMap(([name, typed]) =>
    name.startsWith(prefix) && typeof typed === "string" ? [[name.slice(prefix.length), typed] as const] : [],
  );
  return Object.fromEntries(named);
}

/** An entry left out of the form counts as empty. */
function entry<T>(what: Message | undefined, read: Read<T>) {
  return z
    .string()
    .prefault("")
    .transform((typed, context): T => {
      const found = read(typed.trim());
      if ("value" in found) return found.value;
      const sentence =
        what === undefined ? found.message : message("form.entry", { what, message: found.message });
      context.addIssue({ code: "custom", params: { message: sentence } });
      return z.NEVER;
    });
}

function quantity(
  typed: string,
  asked: Quantity,
  mark: DecimalMark,
): { value: string } | { message: Message } {
  const { unit = "", aboveZero, whole, what, ...limits } = asked;
  const read: TypedNumber = readQuantity(typed, { ...limits, unit, mark });
  if (read.kind !== "number") return { message: read.message };
  const { text } = read;
  if (aboveZero && !(Number(text) > 0))
    return { message: message("form.number.not-above-zero", { value: { decimal: text } }) };
  if (whole && !Number.isInteger(Number(text)))
    return { message: message("form.number.whole", { value: { decimal: text } }) };
  return { value: text };
}

function readingOf(
  typed: string,
  unit: string,
  asked: { mark: DecimalMark; of: "load" | "zero" },
): { value: { text: string; unit: MassUnit } } | { message: Message } {
  try {
    return { value: typedReading(typed, unit, { ...asked, at: "" }) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { message: messageOf(error) };
  }
}

function day(typed: string, { missing }: Words): { value: string } | { message: Message } {
  if (typed === "" && missing) return { message: missing };
  return isDay(typed) ? { value: typed } : { message: message("form.day.not-a-day", { typed }) };
}

function wordsOf(typed: string, { missing, most = 2000 }: Words): { value: string } | { message: Message } {
  if (typed === "") return { message: missing ?? message("form.text.empty") };
  return typed.length <= most
    ? { value: typed }
    : { message: message("form.text.too-long", { length: typed.length, most }) };
}

/** True for a day that the calendar has: 30 February reads as 1 March when it is not looked at. */
function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
