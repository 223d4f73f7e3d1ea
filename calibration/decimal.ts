/**
 * Decimal text, kept as text. A display that shows 31.10 says d = 0.01; a binary float forgets that, so readings
 * travel as decimal strings and only become numbers inside a formula.
 */
const shape = /^([+-]?)(\d*)(?:\.(\d*))?$/;

interface Scaled {
  digits: bigint;
  decimals: number;
}

function scaled(text: string): Scaled {
  const match = shape.exec(text);
  if (!match || (match[2] === "" && (match[3] ?? "") === ""))
    throw new TypeError(`"${text}" is not a decimal number`);
  const fraction = match[3] ?? "";
  const digits = BigInt((match[2] ?? "") + fraction || "0");
  return { digits: match[1] === "-" ? -digits : digits, decimals: fraction.length };
}

function written({ digits, decimals }: Scaled): string {
  const sign = digits < 0n ? "-" : "";
  const bare = (digits < 0n ? -digits : digits).toString().padStart(decimals + 1, "0");
  return decimals === 0 ? sign + bare : `${sign}${bare.slice(0, -decimals)}.${bare.slice(-decimals)}`;
}

/** True for plain decimal text: optional sign, digits, at most one point. */
export function isDecimal(text: string): boolean {
  const match = shape.exec(text);
  return match !== null && (match[2] !== "" || (match[3] ?? "") !== "");
}

/** How many decimals the text shows: "31.10" shows 2. Throws TypeError when the text is no decimal number. */
export function decimalsShown(text: string): number {
  return scaled(text).decimals;
}

/** One unit of the last decimal the text shows: "31.10" gives 0.01. Throws TypeError for other text. */
export function lastPlace(text: string): number {
  return Number(`1e-${scaled(text).decimals}`);
}

/** Exact product of two decimal texts; decimals add up, none are dropped. Throws TypeError for other text. */
export function times(a: string, b: string): string {
  const x = scaled(a);
  const y = scaled(b);
  return written({ digits: x.digits * y.digits, decimals: x.decimals + y.decimals });
}

/** Exact difference a − b of two decimal texts, with the decimals of the longer. Throws TypeError for other text. */
export function minus(a: string, b: string): string {
  const x = scaled(a);
  const y = scaled(b);
  const decimals = Math.max(x.decimals, y.decimals);
  const raise = (s: Scaled) => s.digits * 10n ** BigInt(decimals - s.decimals);
  return written({ digits: raise(x) - raise(y), decimals });
}
