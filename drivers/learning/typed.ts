import { decimalsShown } from "../../calibration/decimal.ts";
import { type Message, message } from "../../calibration/message.ts";
import { readNumber } from "../../calibration/typed-number.ts";
import type { MassUnit } from "../../calibration/units.ts";
import { unitMeaning } from "../unit-words.ts";
import type { Observed } from "./recording.ts";
import { type Displayed, phaseAt, type Recording } from "./recording.ts";

/** A value that the owner read off the display, with the lines that came about then. */
export interface Typed {
  /** decimal text, minus when below zero */
  text: string;
  /** as it was typed, with its unit, for people */
  shown: string;
  unit: MassUnit;
  /** its digits without point, sign and leading zeros; "" for zero */
  digits: string;
  places: number;
  negative: boolean;
  /** pounds and ounces: `text` is in oz */
  pounds: boolean;
  /** lines of the same step, nearest in time first */
  lines: Observed[];
  /** the first of them: those that stood still with the display */
  nearest: Observed[];
}

/** Lines further from the moment of reading off are not compared with what was typed, ms. */
const nearMs = 15_000;

/** Lines that stand still with the display: so many at most, no further away than this, and two however far, ms. */
const mostNearest = 8;
const nearestMs = 3000;

/** What was typed, its lines not yet looked for. */
type Shown = Omit<Typed, "lines" | "nearest">;

/** What the owner typed, each with its lines; or why it cannot be used. */
export function typedValues(
  recording: Recording,
  texts: readonly Observed[],
): Typed[] | { refused: Message } {
  const values: Typed[] = [];
  for (const displayed of recording.displayed ?? []) {
    const value = typedIn(displayed);
    if ("refused" in value) return value;
    values.push({ ...value, ...linesNear(displayed.atMs, recording, texts) });
  }
  const units = [...new Set(values.map(({ unit }) => unit))];
  if (units.length > 1) return { refused: message("learn.refused.two-units", { units }) };
  if (!values.some(({ digits }) => digits !== "")) return { refused: message("learn.refused.nothing-typed") };
  return values;
}

function typedIn({ text, unit }: Displayed): Shown | { refused: Message } {
  const shown = `${text} ${unit}`.trim();
  if (/^lb[ :,+/-]*oz$/i.test(unit.trim()) || /\d\s*lb\b.*\d/i.test(text)) return poundsOf(text, shown);
  const meaning = unitMeaning(unit.trim());
  if (meaning === null) return { refused: message("learn.refused.unit", { typed: shown }) };
  if ("notWeight" in meaning)
    return {
      refused: message("learn.refused.quantity", { typed: shown, quantity: message(meaning.notWeight) }),
    };
  const number = readNumber(text, { displayed: true });
  if (number.kind === "question") return { refused: number.message };
  if (number.kind === "refused") return { refused: message("learn.refused.typed", { typed: shown }) };
  return known(number.text, shown, meaning.unit, false);
}

function known(text: string, shown: string, unit: MassUnit, pounds: boolean): Shown {
  const size = text.replace(/^[+-]/, "");
  const digits = size.replace(".", "").replace(/^0+/, "");
  const negative = text.startsWith("-") && digits !== "";
  return {
    text: negative ? `-${size}` : size,
    shown,
    unit,
    digits,
    places: decimalsShown(size),
    negative,
    pounds,
  };
}

/** "2 lb 3.40", "2:3.40": read in oz, of which 16 are one lb. */
function poundsOf(text: string, shown: string): Shown | { refused: Message } {
  const [, sign = "", lb, oz, fraction] =
    /^\s*([-\u2212]?)\s*(\d+)\s*(?:lb)?[\s:,]\s*(\d{1,2})(?:\.(\d+))?\s*(?:oz)?\s*$/.exec(text) ?? [];
  if (lb === undefined || Number(oz) > 15)
    return { refused: message("learn.refused.typed", { typed: shown }) };
  const whole = String(16 * Number(lb) + Number(oz));
  return known(
    `${sign === "" ? "" : "-"}${whole}${fraction === undefined ? "" : `.${fraction}`}`,
    shown,
    "oz",
    true,
  );
}

function linesNear(
  atMs: number,
  { moments, chunks }: Recording,
  texts: readonly Observed[],
): Pick<Typed, "lines" | "nearest"> {
  const endMs = chunks.at(-1)?.atMs ?? atMs;
  // What is read off at the very moment the next step begins may belong to either.
  const steps = [atMs, atMs - 1].map((ms) => phaseAt(moments, endMs, ms).index);
  const near = texts
    .filter(({ at }) => steps.includes(at.index))
    .map((line) => ({ line, awayMs: Math.abs(line.atMs - atMs) }))
    .filter(({ awayMs }) => awayMs <= nearMs)
    .sort((a, b) => a.awayMs - b.awayMs);
  const nearest = near.slice(0, mostNearest).filter(({ awayMs }, i) => i < 2 || awayMs <= nearestMs);
  return { lines: near.map(({ line }) => line), nearest: nearest.map(({ line }) => line) };
}
