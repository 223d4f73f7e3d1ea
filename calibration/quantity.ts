import type { Arithmetic } from "./arithmetic.ts";

/**
 * A value that remembers which inputs it came from: partials[i] is ∂value/∂input i. The same input standing in two
 * places adds up in one partial, so correlation through a common cause needs no bookkeeping: dry minus dry has no
 * uncertainty, and the balance's span error cancels in the ratio of two readings.
 */
export interface Quantity {
  value: number;
  /** empty when the quantity depends on no input */
  partials: Float64Array;
}

const none = new Float64Array(0);

function combined(value: number, a: Quantity, ca: number, b: Quantity, cb: number): Quantity {
  const size = Math.max(a.partials.length, b.partials.length);
  if (size === 0) return { value, partials: none };
  const partials = new Float64Array(size);
  for (let i = 0; i < a.partials.length; i++) partials[i] = ca * a.partials[i]!;
  for (let i = 0; i < b.partials.length; i++) partials[i] = partials[i]! + cb * b.partials[i]!;
  return { value, partials };
}

/** First-order propagation, exact derivatives. */
export const quantities: Arithmetic<Quantity> = {
  of: (value) => ({ value, partials: none }),
  plus: (a, b) => combined(a.value + b.value, a, 1, b, 1),
  minus: (a, b) => combined(a.value - b.value, a, 1, b, -1),
  times: (a, b) => combined(a.value * b.value, a, b.value, b, a.value),
  over: (a, b) => combined(a.value / b.value, a, 1 / b.value, b, -a.value / (b.value * b.value)),
};

/** Input number `index` of `count`, at this value. */
export function inputQuantity(value: number, index: number, count: number): Quantity {
  const partials = new Float64Array(count);
  partials[index] = 1;
  return { value, partials };
}
