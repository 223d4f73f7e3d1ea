import { decimalsShown } from "./decimal.ts";

/** An exact number: `over`/`under`, with `under` above zero. Money and the masses it is paid for are counted in it. */
export interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

export const zero: Fraction = { over: 0n, under: 1n };

/** The number a decimal text writes, exactly. Throws TypeError for other text. */
export function exactly(decimal: string): Fraction {
  const under = 10n ** BigInt(decimalsShown(decimal));
  return { over: BigInt(decimal.replace(".", "").replace("+", "")), under };
}

function plus(a: Fraction, b: Fraction): Fraction {
  return lowest(a.over * b.under + b.over * a.under, a.under * b.under);
}

export function less(a: Fraction, b: Fraction): Fraction {
  return plus(a, { over: -b.over, under: b.under });
}

export function product(...factors: readonly Fraction[]): Fraction {
  return factors.reduce((a, b) => lowest(a.over * b.over, a.under * b.under), { over: 1n, under: 1n });
}

/** a/b. Throws RangeError when b is zero. */
export function ratio(a: Fraction, b: Fraction): Fraction {
  const sign = b.over < 0n ? -1n : 1n;
  return lowest(sign * a.over * b.under, sign * a.under * b.over);
}

export function sumOf(all: readonly Fraction[]): Fraction {
  return all.reduce(plus, zero);
}

/** Below zero where a < b, zero where they are equal, above zero where a > b. */
export function compared(a: Fraction, b: Fraction): number {
  const difference = less(a, b).over;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** Which way a figure is rounded that does not end at the last decimal. "down" is towards less, also below zero. */
export type Rounding = "down" | "half-even" | "up";

/**
 * Decimal text with so many decimals. half-even is rounding to the nearest with ties to the even digit (ISO 80000-1,
 * annex B, rule A; from memory).
 */
export function roundedText({ over, under }: Fraction, decimals: number, rounding: Rounding): string {
  const scaled = over * 10n ** BigInt(decimals);
  const whole = floorOf(scaled, under);
  const rest = scaled - whole * under;
  const isUp =
    rounding === "up"
      ? rest > 0n
      : rounding === "half-even" && (2n * rest > under || (2n * rest === under && whole % 2n !== 0n));
  return decimalText(isUp ? whole + 1n : whole, decimals);
}

/** All its decimals where it ends within so many; else rounded to them, to the nearest. Always with at least `least`. */
export function shownText(value: Fraction, most: number, least = 0): string {
  const text = roundedText(value, most, "half-even");
  const [whole = "", fraction = ""] = text.split(".");
  const kept = fraction.replace(/0+$/, "").padEnd(least, "0");
  return kept === "" ? whole : `${whole}.${kept}`;
}

function floorOf(over: bigint, under: bigint): bigint {
  const cut = over / under;
  return over % under < 0n ? cut - 1n : cut;
}

function decimalText(digits: bigint, decimals: number): string {
  const bare = (digits < 0n ? -digits : digits).toString().padStart(decimals + 1, "0");
  const sign = digits < 0n ? "-" : "";
  return decimals === 0 ? sign + bare : `${sign}${bare.slice(0, -decimals)}.${bare.slice(-decimals)}`;
}

function lowest(over: bigint, under: bigint): Fraction {
  if (under === 0n) throw new RangeError("a fraction over zero");
  const shared = divisor(over < 0n ? -over : over, under);
  return { over: over / shared, under: under / shared };
}

function divisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : divisor(b, a % b);
}
