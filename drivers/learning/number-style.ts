import type { NumberPart } from "./profile.ts";

/** A number with everything between the text before and the text behind it. */
export interface Zone {
  /** blanks and sign before the digits: "+   ", "   -" */
  left: string;
  digits: string;
  /** blanks behind the digits that fill the field */
  right: string;
}

const signOf = (left: string) => left.replace(/ /g, "");

/** How numbers are written, from every number seen. The comma must be decided by the caller when it is unclear. */
export function numberStyle(
  zones: readonly Zone[],
  told: { comma: "decimal" | "thousands" | null; impliedPlaces: number | null },
  align: "right" | "left",
): NumberPart {
  const widths = new Set(zones.map((zone) => zone.left.length + zone.digits.length + zone.right.length));
  // Numbers of one length do not show whether longer ones take from the padding or make the line longer.
  const oneLength = align === "right" && new Set(zones.map(({ digits }) => digits.length)).size === 1;
  const pads = zones.map(({ left }) => left.length - signOf(left).length);
  const signs = zones.map(({ left }) => signOf(left));
  const signed = zones.filter(({ left }) => signOf(left) !== "");
  const pinned = signed.some(({ left }) => /[+\-\u2212] /.test(left));
  const { decimalMark, grouping } = marksOf(zones, told.comma);
  const bare = zones.map(({ digits }) => digits.replace(/[[\]]/g, ""));
  const wholes = bare.map((digits) => (decimalMark === "none" ? digits : digits.split(decimalMark)[0]!));
  const zeroPadded = wholes.some((whole) => /^0\d/.test(whole));
  const places = bare.map((digits) =>
    decimalMark === "none" || !digits.includes(decimalMark)
      ? 0
      : digits.length - 1 - digits.lastIndexOf(decimalMark),
  );
  const plusSeen = signs.filter((sign) => sign === "+").length;
  const plusMissing = signs.filter((sign) => sign === "").length;
  return {
    is: "number",
    width: widths.size === 1 && (!oneLength || zeroPadded) ? [...widths][0]! : null,
    align,
    padLeast: oneLength && !zeroPadded ? 0 : Math.min(...pads),
    padMost: Math.max(...pads),
    sign: pinned ? "pinned-left" : "beside-digits",
    signAt: pinned ? Math.min(...signed.map(({ left }) => left.search(/[+\-\u2212]/))) : 0,
    plus: plusSeen === 0 ? "never" : plusMissing === 0 ? "always" : "sometimes",
    decimalMark,
    grouping,
    places: [...new Set(places)].sort((a, b) => a - b),
    impliedPlaces: decimalMark === "none" ? told.impliedPlaces : null,
    digits: zeroPadded ? mode(bare.map((digits) => digits.replace(/\D/g, "").length)) : null,
    auxiliary: zones.some(({ digits }) => digits.includes("[")),
  };
}

function mode(values: readonly number[]): number | null {
  return new Set(values).size === 1 ? values[0]! : null;
}

export function marksOf(zones: readonly Zone[], comma: "decimal" | "thousands" | null) {
  const kinds = new Set(zones.flatMap(({ digits }) => [...digits.replace(/[\d[\]]/g, "")]));
  const apostrophe = kinds.delete("'");
  const both = zones.find(({ digits }) => digits.includes(".") && digits.includes(","))?.digits;
  let decimalMark: NumberPart["decimalMark"] = "none";
  let grouping: NumberPart["grouping"] = apostrophe ? "'" : "none";
  if (both !== undefined) {
    decimalMark = both.lastIndexOf(".") > both.lastIndexOf(",") ? "." : ",";
    grouping = decimalMark === "." ? "," : ".";
  } else if (kinds.size === 1) {
    const only = kinds.has(",") ? "," : ".";
    if (comma === "thousands") grouping = only;
    else decimalMark = only;
  }
  return { decimalMark, grouping };
}

/**
 * True when every mark seen could be a mark of thousands as well as of decimals: one to three digits without a
 * leading zero, the mark, three digits. A single "0,000" or "31,10" settles it; 0 beside "1,234" does not.
 */
export function commaUnclear(zones: readonly Zone[]): boolean {
  const marked = zones.map(({ digits }) => digits).filter((digits) => /[.,]/.test(digits));
  return marked.length > 0 && marked.every((digits) => /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits));
}
