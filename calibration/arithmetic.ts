/**
 * The four operations of a measurement model. A model is written once over an Arithmetic and evaluated three ways:
 * with plain numbers, with quantities that remember their inputs (the budget), and with whole batches of trials
 * (Monte Carlo). So the three can never be three different models.
 */
export interface Arithmetic<N> {
  of(value: number): N;
  plus(a: N, b: N): N;
  minus(a: N, b: N): N;
  times(a: N, b: N): N;
  over(a: N, b: N): N;
}

/** Plain numbers. */
export const plain: Arithmetic<number> = {
  of: (value) => value,
  plus: (a, b) => a + b,
  minus: (a, b) => a - b,
  times: (a, b) => a * b,
  over: (a, b) => a / b,
};

/** c0 + c1·x + c2·x² + … over any arithmetic, by Horner's rule. */
export function polynomial<N>(a: Arithmetic<N>, x: N, coefficients: readonly number[]): N {
  return coefficients
    .toReversed()
    .map((c) => a.of(c))
    .reduce((sum, c) => a.plus(a.times(sum, x), c));
}

/** Sum of any number of terms. */
export function sum<N>(a: Arithmetic<N>, terms: readonly N[]): N {
  return terms.reduce((total, term) => a.plus(total, term), a.of(0));
}
