import { type Message, message } from "./message.ts";
import { type Reading, readNumber, type TypedNumber } from "./typed-number.ts";
import { converted, unitTyped } from "./typed-unit.ts";

export interface Asked extends Reading {
  /** the unit the entry is asked in; "" for a plain number */
  unit: string;
  /** the unit stands in a list beside the entry: another one typed into it contradicts the list and is asked about */
  unitChosen?: boolean;
  /** the smallest and largest right value, in the unit asked for */
  from?: number;
  to?: number;
}

/** The number, and behind it the unit typed with it: "31.10 g", "21,4 °C", "10.49 g/cm3". "28.l4" is no unit l4. */
const shape = /^([+\-−–]?[\d.,][\d.,'’\s\u00a0\u202f]*?)\s*([^\d\s.,'’][^\d]*3?)?$/u;

/**
 * Reads a number with the unit it may carry: "31.10 g", "21,4 °C", "70 °F" where °C is asked. Gives decimal text in
 * the unit asked for. A unit of something else is refused; "gr", a unit against the list beside it, and a
 * temperature that only makes sense in °F come back as questions. A value outside the range is refused.
 */
export function readQuantity(typed: string, asked: Asked): TypedNumber {
  const { unit } = asked;
  const [, digits = typed, spelling] = shape.exec(typed.trim()) ?? [];
  const read = readNumber(spelling === undefined ? typed : digits, asked);
  if (spelling === undefined) return read.kind === "number" ? inRange(read.text, asked) : read;
  const named = unitTyped(spelling);
  if (named === undefined && read.kind === "refused")
    return refused(message("form.number.not-a-number", { typed: typed.trim() }));
  if (named === undefined) return refused(wrongUnit("form.unit.unknown", spelling, unit));
  if (read.kind === "question")
    return { ...read, meanings: read.meanings.map((meaning) => `${meaning} ${named}`) };
  if (read.kind === "refused") return read;
  if (named === "unclear")
    return {
      kind: "question",
      meanings: [`${digits} g`, `${digits} gn`],
      message: message("form.unit.unclear", { typed: typed.trim() }),
    };
  const text = converted(read.text, named, unit);
  if (text === undefined) return refused(wrongUnit("form.unit.other", named, unit));
  if (asked.unitChosen && named !== unit)
    return refused(message("form.unit.two", { typed: named, chosen: unit }));
  return inRange(text, asked, named);
}

const wrongUnit = (code: "form.unit.unknown" | "form.unit.other", unit: string, asked: string): Message =>
  asked === "" ? message("form.unit.none", { unit }) : message(code, { unit, asked });

const refused = (sentence: Message): TypedNumber => ({ kind: "refused", message: sentence });

function inRange(text: string, asked: Asked, named?: string): TypedNumber {
  const { from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY, unit } = asked;
  const value = Number(text);
  if (value >= from && value <= to) return { kind: "number", text };
  const celsius = unit === "°C" && named === undefined ? converted(text, "°F", "°C")! : undefined;
  if (celsius !== undefined && value > to && Number(celsius) >= from && Number(celsius) <= to)
    return {
      kind: "question",
      meanings: [`${asked.mark === "," ? text.replace(".", ",") : text} °F`],
      message: message("form.number.fahrenheit", {
        typed: { decimal: text },
        celsius: { decimal: celsius },
        from,
        to,
      }),
    };
  const limits = { value: { decimal: text }, unit: unit === "" ? "" : `\u00a0${unit}` };
  if (from === Number.NEGATIVE_INFINITY) return refused(message("form.number.above", { ...limits, to }));
  if (to === Number.POSITIVE_INFINITY) return refused(message("form.number.below", { ...limits, from }));
  return refused(message("form.number.out-of-range", { ...limits, from, to }));
}
