import type { NumberPart } from "./profile.ts";
import type { SignForm } from "./signs.ts";
import type { Notation } from "./written-number.ts";

/** A number with everything between the text before and the text behind it. */
export interface Zone {
  /** blanks and sign before the digits: "+   ", "   -" */
  left: string;
  /** digits with marks, exponent and what wraps them */
  digits: string;
  /** blanks behind the digits that fill the field */
  right: string;
}

const signOf = (left: string) => left.replace(/ /g, "");

/** How numbers are written, from every number seen. */
export function numberStyle(
  zones: readonly Zone[],
  notation: Notation,
  sign: SignForm,
  { align, fill, anyLeading }: { align: "right" | "left"; fill: string | null; anyLeading: boolean },
): NumberPart {
  const widths = new Set(zones.map((zone) => zone.left.length + zone.digits.length + zone.right.length));
  // Numbers of one length do not show whether longer ones take from the padding or make the line longer.
  const oneLength = align === "right" && new Set(zones.map(({ digits }) => digits.length)).size === 1;
  const pads = zones.map(({ left }) => left.length - signOf(left).length);
  const signs = zones.map(({ left }) => signOf(left));
  const signed = zones.filter(({ left }) => signOf(left) !== "");
  const pinned = signed.some(({ left }) => /[+\-\u2212] /.test(left));
  const { decimalMark } = notation;
  const bare = zones.map(({ digits }) =>
    digits.replace(/[eE][+-]?\d+/, "").replace(/[[\]()<>{}+\-\u2212 ]/g, ""),
  );
  const wholes = bare.map((digits) => (decimalMark === "none" ? digits : digits.split(decimalMark)[0]!));
  const zeroPadded = !notation.pounds && wholes.some((whole) => /^0\d/.test(whole));
  const places = bare.map((digits) =>
    decimalMark === "none" || !digits.includes(decimalMark)
      ? 0
      : digits.length - 1 - digits.lastIndexOf(decimalMark),
  );
  const plusSeen = signs.filter((one) => one === "+").length;
  const plusMissing = signs.filter((one) => one === "").length;
  const counts = bare.map((digits) => digits.replace(/\D/g, ""));
  const fixed =
    zeroPadded && new Set(counts.map(({ length }) => length)).size === 1 ? counts[0]!.length : null;
  const significant = Math.max(...counts.map((digits) => digits.replace(/^0+/, "").length));
  const wrapped = sign.wraps.length > 1 || sign.wraps.some(({ before, after }) => before + after !== "");
  return {
    is: "number",
    width: widths.size === 1 && (!oneLength || zeroPadded) ? [...widths][0]! : null,
    align,
    padLeast: oneLength && !zeroPadded ? 0 : Math.min(...pads),
    padMost: Math.max(...pads),
    sign: pinned ? "pinned-left" : "beside-digits",
    signAt: pinned ? Math.min(...signed.map(({ left }) => left.search(/[+\-\u2212]/))) : 0,
    plus: plusSeen === 0 ? "never" : plusMissing === 0 ? "always" : "sometimes",
    places: [...new Set(places)].sort((a, b) => a - b),
    digits: fixed,
    auxiliary: bare.length > 0 && zones.some(({ digits }) => /\[\d\]|\d\(\d\)/.test(digits)),
    ...notation,
    ...(bare.some((digits) => /^[.,]/.test(digits)) && { noZero: true }),
    ...(fill !== null && { fill }),
    ...(wrapped && { wraps: sign.wraps }),
    ...(!sign.evident && { minus: "refused" as const }),
    ...(fixed !== null && !anyLeading && { mostDigits: significant + 1 }),
  };
}
