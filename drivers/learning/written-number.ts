import type { NumberPart } from "./profile.ts";

/** How the digits of a number become decimal text. */
export type Notation = Pick<
  NumberPart,
  "decimalMark" | "grouping" | "impliedPlaces" | "shift" | "exponent" | "outPlaces" | "pounds"
>;

/** What stands in the place of one number. */
export interface WrittenNumber {
  /** filling and sign before the digits */
  left: string;
  /** digits with their marks */
  digits: string;
  /** "E-03", or "" */
  exponent: string;
  /** filling behind */
  right: string;
  wrap: { before: string; after: string; minus: boolean };
}

const isMinus = (sign: string) => sign !== "" && sign !== "+";

/**
 * The number as decimal text, or null when it is not written exactly as this balance writes numbers: width, padding,
 * place of the sign, marks, decimals. A torn or garbled number differs in one of them.
 */
export function decimalOf(style: NumberPart, written: WrittenNumber): string | null {
  const { digits, exponent, right, wrap } = written;
  const left = style.fill === undefined ? written.left : written.left.replaceAll(style.fill, " ");
  const sign = left.replace(/ /g, "");
  if (!signFits(style, left, sign)) return null;
  const size = left.length + wrap.before.length + digits.length + exponent.length + wrap.after.length;
  if (style.width !== null && size + right.length !== style.width) return null;
  if (style.width === null || style.align === "left") {
    const pad = left.length - sign.length;
    const takenBySign = sign === "" ? 0 : 1;
    if (pad > style.padMost || pad < style.padLeast - takenBySign) return null;
  }
  if (style.width === null && right !== "") return null;
  if (style.auxiliary !== /[\])]$/.test(digits)) return null;
  const bare = withoutBrackets(digits);
  const bareDigits = bare.replace(/\D/g, "");
  if (style.digits !== null && bareDigits.length !== style.digits) return null;
  if (style.mostDigits !== undefined && bareDigits.replace(/^0+/, "").length > style.mostDigits) return null;
  // Leading zeros are only right where every number is filled up with them.
  if (style.digits === null && /^0\d/.test(bare) && style.impliedPlaces === null && !style.pounds)
    return null;
  if (/^\D/.test(bare) && !style.noZero) return null;
  if (!placesFit(style, bare)) return null;
  const size10 = magnitudeOf(style, bare, exponent);
  if (size10 === null) return null;
  const negative = (isMinus(sign) || wrap.minus) && /[1-9]/.test(size10);
  if (negative && style.minus === "refused") return null;
  return negative ? `-${size10}` : size10;
}

const withoutBrackets = (digits: string) => digits.replace(/[[\]()]/g, "");

function signFits(style: NumberPart, left: string, sign: string): boolean {
  if (style.plus === "always" && sign === "") return false;
  if (style.plus === "never" && sign === "+") return false;
  if (isMinus(sign) && (style.minus === "refused" || style.wraps?.some(({ minus }) => minus))) return false;
  if (sign === "") return true;
  if (style.sign === "pinned-left") return left.indexOf(sign) === style.signAt;
  return left.endsWith(sign);
}

function placesFit({ decimalMark, places }: NumberPart, bare: string): boolean {
  const at = decimalMark === "none" ? -1 : bare.lastIndexOf(decimalMark);
  return places.includes(at < 0 ? 0 : bare.length - 1 - at);
}

/** The size of a number from its digits, marks and exponent; null when they do not stand as this notation wants them. */
export function magnitudeOf(notation: Notation, digits: string, exponent: string): string | null {
  const { decimalMark, grouping, impliedPlaces, shift = 0, outPlaces } = notation;
  const bare = withoutBrackets(digits);
  if (notation.pounds) return ounces(bare);
  const [whole = "", fraction = "", ...more] = decimalMark === "none" ? [bare] : bare.split(decimalMark);
  if (more.length > 0 || !/^\d*$/.test(fraction)) return null;
  const plain = whole === "" && fraction !== "" ? "0" : ungrouped(whole, grouping);
  if (plain === null) return null;
  if ((exponent !== "") !== (notation.exponent === true)) return null;
  const power = shift + (exponent === "" ? 0 : Number(exponent.slice(1)));
  const text = pointed(plain + fraction, fraction.length + (impliedPlaces ?? 0) - power);
  return outPlaces === undefined ? text : withPlaces(text, outPlaces);
}

/** Digits with the point so many places from their end; fewer than none are zeros. */
function pointed(digits: string, places: number): string {
  if (places <= 0) return trimmed(digits + "0".repeat(-places));
  const filled = digits.padStart(places + 1, "0");
  return `${trimmed(filled.slice(0, -places))}.${filled.slice(-places)}`;
}

/** The same value with so many decimals; null when that would cut a digit off. */
function withPlaces(text: string, places: number): string | null {
  const [whole = "", fraction = ""] = text.split(".");
  if (/[1-9]/.test(fraction.slice(places))) return null;
  const kept = fraction.slice(0, places).padEnd(places, "0");
  return places === 0 ? whole : `${whole}.${kept}`;
}

const trimmed = (digits: string) => digits.replace(/^0+(?=\d)/, "");

function ungrouped(whole: string, grouping: Notation["grouping"]): string | null {
  if (grouping === "none") return /^\d+$/.test(whole) ? whole : null;
  const [first = "", ...groups] = whole.split(grouping);
  if (!/^\d{1,3}$/.test(first) || groups.some((group) => !/^\d{3}$/.test(group))) return null;
  return first + groups.join("");
}

/** "2 lb 3.40", "2:03.40" as ounces; 16 oz are one lb (1959 agreement, 24 FR 5348). */
function ounces(text: string): string | null {
  const [, lb, oz, fraction = ""] = /^(\d+)(?: *lb *|:| +)(\d{1,2})(?:\.(\d+))?$/.exec(text) ?? [];
  if (lb === undefined || Number(oz) > 15) return null;
  const whole = String(16 * Number(lb) + Number(oz));
  return fraction === "" ? whole : `${whole}.${fraction}`;
}
