import type { Arithmetic } from "./arithmetic.ts";

/** A number for every trial, or one number for all of them. */
export type Batch = Float64Array | number;

type Operation = (a: Batch, b: Batch) => Batch;

/**
 * Arithmetic over `size` trials at a time. Results live in one pool of columns that `start()` hands out anew, so a
 * block of trials allocates nothing after the first.
 */
export function batches(size: number): Arithmetic<Batch> & { start(): void } {
  const pool: Float64Array[] = [];
  let used = 0;
  const column = () => {
    if (used === pool.length) pool.push(new Float64Array(size));
    return pool[used++]!;
  };
  const plus: Operation = (a, b) => {
    if (typeof a === "number") return typeof b === "number" ? a + b : plus(b, a);
    if (a === b) return times(a, 2);
    if (b === 0) return a;
    const out = column();
    if (typeof b === "number") for (let i = 0; i < size; i++) out[i] = a[i]! + b;
    else for (let i = 0; i < size; i++) out[i] = a[i]! + b[i]!;
    return out;
  };
  const minus: Operation = (a, b) => {
    if (typeof b === "number") return plus(a, -b);
    const out = column();
    if (typeof a === "number") for (let i = 0; i < size; i++) out[i] = a - b[i]!;
    else for (let i = 0; i < size; i++) out[i] = a[i]! - b[i]!;
    return out;
  };
  const times: Operation = (a, b) => {
    if (typeof a === "number") return typeof b === "number" ? a * b : times(b, a);
    if (b === 1) return a;
    const out = column();
    if (typeof b === "number") for (let i = 0; i < size; i++) out[i] = a[i]! * b;
    else for (let i = 0; i < size; i++) out[i] = a[i]! * b[i]!;
    return out;
  };
  const over: Operation = (a, b) => {
    if (typeof b === "number") return typeof a === "number" ? a / b : times(a, 1 / b);
    const out = column();
    if (typeof a === "number") for (let i = 0; i < size; i++) out[i] = a / b[i]!;
    else for (let i = 0; i < size; i++) out[i] = a[i]! / b[i]!;
    return out;
  };
  return {
    of: (value) => value,
    plus,
    minus,
    times,
    over,
    start: () => {
      used = 0;
    },
  };
}
