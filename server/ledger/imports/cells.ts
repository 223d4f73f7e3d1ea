import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import type { DecimalMark } from "../../../calibration/typed-number.ts";
import { readQuantity } from "../../../calibration/typed-quantity.ts";

/** How one cell of a list is read: its text in, its value out, or an issue whose `params.message` is what is wrong. */
export type Cell = z.ZodType<unknown, string>;

type Read<T> = { value: T } | { message: Message };

function cell<T>(read: (trimmed: string) => Read<T>) {
  return z.string().transform((given, context): T => {
    const found = read(given.trim());
    if ("value" in found) return found.value;
    context.addIssue({ code: "custom", params: { message: found.message } });
    return z.NEVER;
  });
}

/** The same where the cell may be empty. */
function orEmpty<T>(read: (trimmed: string) => Read<T>) {
  return cell((trimmed): Read<T | undefined> => (trimmed === "" ? { value: undefined } : read(trimmed)));
}

const longest = 2000;

function words(trimmed: string): Read<string> {
  return trimmed.length <= longest
    ? { value: trimmed }
    : { message: message("form.text.too-long", { length: trimmed.length, most: longest }) };
}

/** Text that must not be empty. */
export const text = cell((trimmed) =>
  trimmed === "" ? { message: message("form.text.empty") } : words(trimmed),
);

/** Text that may be empty. */
export const anyText = cell(words);

/** Text or nothing. */
export const optionalText = orEmpty(words);

/** Text that has this shape; `says` tells the right one. */
export function shaped(shape: RegExp, sentence: Message) {
  return cell((trimmed): Read<string> => (shape.test(trimmed) ? { value: trimmed } : { message: sentence }));
}

const quantity =
  (unit: string, mark: DecimalMark, aboveZero: boolean) =>
  (trimmed: string): Read<string> => {
    const read = readQuantity(trimmed, { unit, mark });
    if (read.kind !== "number") return { message: read.message };
    return aboveZero && !(Number(read.text) > 0)
      ? { message: message("form.number.not-above-zero", { value: { decimal: read.text } }) }
      : { value: read.text };
  };

/** Number cells of a list with this decimal mark; text keeps its decimals, so that 31,10 becomes 31.10. */
export function numberCells(mark: DecimalMark) {
  const positiveDecimal = (unit: string) => cell(quantity(unit, mark, true));
  const optionalPositiveDecimal = (unit: string) => orEmpty(quantity(unit, mark, true));
  return {
    /** decimal text in the unit of the heading, of any sign */
    optionalDecimal: (unit: string) => orEmpty(quantity(unit, mark, false)),
    positiveDecimal,
    optionalPositiveDecimal,
    positiveNumber: (unit: string) => positiveDecimal(unit).transform(Number),
    optionalPositiveNumber: (unit: string) =>
      optionalPositiveDecimal(unit).transform((value) => (value === undefined ? undefined : Number(value))),
    /** parts of an alloy such as "Au 75; Ag 12.5; Cu 12.5" in per cent of mass, as shares of 1 */
    composition: cell((trimmed) => compositionOf(trimmed, mark)),
  };
}

/** A day or a moment by ISO 8601, given back as a moment in UTC. Other orders of day and month are not guessed. */
export const isoMoment = cell((value): Read<string> => {
  const shape = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2}))?$/;
  return shape.test(value) && isRealDay(value.slice(0, 10)) && !Number.isNaN(Date.parse(value))
    ? { value: new Date(value).toISOString() }
    : { message: message("import.cell.no-moment", { typed: value }) };
});

/** 30 February reads as 1 March when it is not looked at. */
function isRealDay(day: string): boolean {
  const midnight = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(midnight.getTime()) && midnight.toISOString().startsWith(day);
}

/** One of a few words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(choices: Words) {
  return cell((trimmed): Read<Words[number]> => {
    const value = choices.find((one) => one === trimmed);
    return value === undefined
      ? { message: message("import.cell.no-choice", { typed: trimmed, choices: { anyOf: choices } }) }
      : { value };
  });
}

function compositionOf(trimmed: string, mark: DecimalMark): Read<Record<string, number>> {
  const shares: Record<string, number> = {};
  for (const part of trimmed.split(";")) {
    const [, symbol, typed = ""] = /^\s*([A-Z][a-z]?)\s+(.+)$/.exec(part) ?? [];
    const percent = readQuantity(typed.replace(/%\s*$/, ""), { unit: "", mark });
    if (symbol === undefined || percent.kind !== "number" || Number(percent.text) < 0)
      return { message: message("import.cell.no-composition", { part: part.trim() }) };
    shares[symbol] = (shares[symbol] ?? 0) + Number(percent.text) / 100;
  }
  const sum = Object.values(shares).reduce((a, b) => a + b, 0);
  return Math.abs(sum - 1) <= 0.005
    ? { value: shares }
    : { message: message("import.cell.composition-sum", { sum_percent: sum * 100 }) };
}
