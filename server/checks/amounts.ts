import { type Message, message } from "../../calibration/message.ts";

/** Digits that a text can be asked for: enough to tell two values apart. */
const mostDigits = 6;

/** No balance shows a nanogram: less is the rounding of binary numbers. */
const leastShownGrams = 1e-9;

/** A mass as a value in a message: in mg below 0.1 g, else in g; `digits` are the significant ones shown of mg. */
export function mass(grams: number, digits = 2): Message {
  const size = Math.abs(grams);
  if (size < leastShownGrams) return message("amount.g", { g: 0 });
  return size < 0.1 ? message("amount.mg", { mg: grams * 1000, digits }) : message("amount.g", { g: grams });
}

/** A found mass beside its limit, both with the digits that show on which side of it the found one lies. */
export function massBesideLimit(foundGrams: number, limitGrams: number): { found: Message; limit: Message } {
  const found = Math.abs(foundGrams);
  const digits = decidingDigits(found, limitGrams);
  return { found: mass(found, digits), limit: mass(limitGrams, digits) };
}

/** Significant digits, from two on, that keep apart two values which are not the same. */
function decidingDigits(a: number, b: number): number {
  let digits = 2;
  while (digits < mostDigits && a !== b && a.toPrecision(digits) === b.toPrecision(digits)) digits++;
  return digits;
}

/** A density as a value in a message; `decimals` follow from the uncertainty it stands beside, two digits of it. */
export function density(gPerCm3: number, decimals: number): Message {
  return message("amount.density", { g_cm3: gPerCm3, decimals });
}

/** Decimals that show two digits of a value: 4 for 0.0016; from 2 to 6. */
export function decimalsOf(value: number): number {
  return Math.min(6, Math.max(2, 1 - Math.floor(Math.log10(value))));
}
