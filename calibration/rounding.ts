/** A value and its uncertainty as decimal text of the same last place. */
export interface RoundedPair {
  value: string;
  u: string;
  /** decimals shown; negative when the last place stands left of the point (−2: hundreds) */
  decimals: number;
}

/**
 * Writes a value with its uncertainty: the uncertainty to two significant digits, the value to the same last place,
 * trailing zeros kept. GUM (JCGM 100:2008) 7.2.6: no more than two significant digits for u and U, the estimate
 * rounded to be consistent with it. Both to the nearest; nothing is rounded twice.
 * Units: any, the same for both. Throws TypeError when the uncertainty is not a positive finite number.
 */
export function roundedPair(value: number, u: number, significant: 1 | 2 = 2): RoundedPair {
  if (!(u > 0) || !Number.isFinite(u) || !Number.isFinite(value))
    throw new TypeError(
      `${value} with the uncertainty ${u}: both must be finite, the uncertainty above zero`,
    );
  // The rounded form decides the last place: 0.0996 becomes 0.10, shown with two decimals.
  const exponent = Number(u.toExponential(significant - 1).split("e")[1]);
  const decimals = significant - 1 - exponent;
  return { value: toPlace(value, decimals), u: toPlace(u, decimals), decimals };
}

/** A number as decimal text with so many decimals; negative decimals round to tens, hundreds and so on. */
export function toPlace(value: number, decimals: number): string {
  if (decimals >= 0) return withoutMinusZero(value.toFixed(Math.min(decimals, 100)));
  const step = 10 ** -decimals;
  return withoutMinusZero((Math.round(value / step) * step).toFixed(0));
}

function withoutMinusZero(text: string): string {
  return /^-[0.]*$/.test(text) ? text.slice(1) : text;
}
