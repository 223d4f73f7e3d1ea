import { toPlace } from "../../calibration/rounding.ts";

/** Mass in words: mg below 0.1 g, else g; as many digits as say something. For sentences, never for results. */
export function massWords(grams: number): string {
  const size = Math.abs(grams);
  if (size === 0) return "0 g";
  if (size < 0.1) return `${shortest(grams * 1000, 2)} mg`;
  return `${shortest(grams, 4)} g`;
}

/** A number with the given significant digits and no exponent: 0.3, 1.4, 120. */
export function shortest(value: number, digits: number): string {
  if (value === 0) return "0";
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  return toPlace(value, decimals);
}

/** Density in words, g/cm³, to a hundredth. */
export function densityWords(gPerCm3: number): string {
  return `${gPerCm3.toFixed(2)} g/cm³`;
}

/** 1st, 2nd, 3rd, 4th … */
export function ordinal(n: number): string {
  const tens = n % 100;
  if (tens >= 11 && tens <= 13) return `${n}th`;
  return `${n}${["th", "st", "nd", "rd"][n % 10] ?? "th"}`;
}
