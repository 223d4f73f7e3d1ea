import type { NumberPart } from "./profile.ts";

/**
 * The number as decimal text, or null when it is not written exactly as this balance writes numbers: width, padding,
 * place of the sign, marks, decimals. A torn or garbled number differs in one of them.
 */
export function decimalOf(style: NumberPart, left: string, digits: string, right: string): string | null {
  const sign = left.replace(/ /g, "");
  if (!signFits(style, left, sign)) return null;
  if (style.width !== null && left.length + digits.length + right.length !== style.width) return null;
  if (style.width === null || style.align === "left") {
    const pad = left.length - sign.length;
    const takenBySign = sign === "" ? 0 : 1;
    if (pad > style.padMost || pad < style.padLeast - takenBySign) return null;
  }
  if (style.width === null && right !== "") return null;
  if (style.auxiliary !== digits.endsWith("]")) return null;
  const bare = digits.replace(/[[\]]/g, "");
  if (style.digits !== null && bare.replace(/\D/g, "").length !== style.digits) return null;
  const plain = pointed(style, bare);
  if (plain === null) return null;
  const negative = sign !== "" && sign !== "+" && /[1-9]/.test(plain);
  return negative ? `-${plain}` : plain;
}

function signFits(style: NumberPart, left: string, sign: string): boolean {
  if (style.plus === "always" && sign === "") return false;
  if (style.plus === "never" && sign === "+") return false;
  if (sign === "") return true;
  if (style.sign === "pinned-left") return left.indexOf(sign) === style.signAt;
  return left.endsWith(sign);
}

function pointed(style: NumberPart, bare: string): string | null {
  const [whole = "", fraction = "", ...more] =
    style.decimalMark === "none" ? [bare] : bare.split(style.decimalMark);
  if (more.length > 0 || !style.places.includes(fraction.length)) return null;
  if (!/^\d*$/.test(fraction)) return null;
  const digits = ungrouped(whole, style.grouping);
  if (digits === null) return null;
  // Leading zeros are only right where every number is filled up with them.
  if (style.digits === null && /^0\d/.test(digits) && style.impliedPlaces === null) return null;
  if (style.impliedPlaces !== null && style.impliedPlaces > 0) {
    const filled = digits.padStart(style.impliedPlaces + 1, "0");
    return `${trimmed(filled.slice(0, -style.impliedPlaces))}.${filled.slice(-style.impliedPlaces)}`;
  }
  return fraction === "" ? trimmed(digits) : `${trimmed(digits)}.${fraction}`;
}

const trimmed = (digits: string) => digits.replace(/^0+(?=\d)/, "");

function ungrouped(whole: string, grouping: NumberPart["grouping"]): string | null {
  if (grouping === "none") return /^\d+$/.test(whole) ? whole : null;
  const [first = "", ...groups] = whole.split(grouping);
  if (!/^\d{1,3}$/.test(first) || groups.some((group) => !/^\d{3}$/.test(group))) return null;
  return first + groups.join("");
}
