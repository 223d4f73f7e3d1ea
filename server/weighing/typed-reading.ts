import { isDecimal } from "../../calibration/decimal.ts";
import { isMassUnit, type MassUnit } from "../../calibration/units.ts";

/** What the language of a page writes before the decimals. */
export type DecimalMark = "." | ",";

/** A typed number as it was understood, or the sentence that sends it back. */
export type Typed<T> = { understood: T } | { refused: string };

/**
 * A typed number as plain decimal text. Comma and point both stand for the decimal mark; a thousands mark is never
 * guessed: "1,234" could be either where a comma groups, and goes back with both meanings, and so does "1.234,5".
 * Where the page's own decimal mark is the comma, "1,234" has one meaning. A single point is always the decimal mark,
 * on a German page too, since it is read off a display: that is where this differs from the pages' `readNumber`.
 */
export function typedDecimal(
  text: string,
  what: string,
  example: string,
  ownMark: DecimalMark = ".",
): Typed<string> {
  const bare = text
    .trim()
    .replace(/\u2212/g, "-")
    .replace(/^\+/, "");
  if (bare === "") return { refused: `${what} is empty. Right: a number such as ${example}.` };
  if (ownMark === "." && /^-?[1-9]\d{0,2},\d{3}$/.test(bare))
    return {
      refused: `${what} "${bare}" can be read two ways: ${bare.replace(",", ".")} or ${bare.replace(",", "")}. Type it with a point, or without any mark.`,
    };
  if (/^-?\d+([.,])\d+(?!\1)[.,]\d+$/.test(bare)) {
    const [whole = "", middle = "", rest = ""] = bare.split(/[.,]/);
    return {
      refused: `${what} "${bare}" can be read two ways: ${whole}${middle}.${rest} or ${whole}.${middle}${rest}. Type it with one comma or point.`,
    };
  }
  const decimal = bare.replace(",", ".");
  if (!isDecimal(decimal))
    return {
      refused: `${what} "${bare}" is not a number. Right: digits with one comma or point, such as ${example}.`,
    };
  return { understood: decimal };
}

/** A typed weight: decimal text as shown by the scale, and its unit. Negative weights go back, unless it is a zero. */
export function typedReading(
  text: string,
  unit: string,
  of: "load" | "zero" = "load",
  ownMark: DecimalMark = ".",
): Typed<{ text: string; unit: MassUnit }> {
  if (!isMassUnit(unit))
    return {
      refused: `Unit "${unit}" is not known here. Right: the unit on the scale, one of g, kg, mg, ct, ozt, dwt, gn, oz.`,
    };
  const decimal = typedDecimal(text, "The reading", "31.10", ownMark);
  if ("refused" in decimal) return decimal;
  if (of === "load" && decimal.understood.startsWith("-"))
    return {
      refused: `The reading "${decimal.understood}" is below zero. A piece that floats needs a sinker; otherwise zero the scale and weigh again.`,
    };
  return { understood: { text: decimal.understood, unit } };
}

/** A typed water temperature in °C within the given range; a Fahrenheit-looking value is asked about, not changed. */
export function typedCelsius(
  text: string,
  range: { from: number; to: number },
  ownMark: DecimalMark = ".",
): Typed<string> {
  const decimal = typedDecimal(text, "The water temperature", "21.4", ownMark);
  if ("refused" in decimal) return decimal;
  const celsius = Number(decimal.understood);
  if (celsius >= range.from && celsius <= range.to) return decimal;
  const asFahrenheit = ((celsius - 32) * 5) / 9;
  const perhaps =
    celsius > range.to && asFahrenheit >= range.from && asFahrenheit <= range.to
      ? ` If the thermometer shows °F, ${decimal.understood} °F is ${asFahrenheit.toFixed(1)} °C: type that.`
      : "";
  return {
    refused: `Water at ${decimal.understood} °C: the density of water is known here from ${range.from} to ${range.to} °C.${perhaps || " Check the thermometer."}`,
  };
}
