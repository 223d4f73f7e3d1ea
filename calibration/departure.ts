import type { Input, Inputs } from "./input.ts";

/** An input with its factor in a load. */
export interface Term {
  input: Input;
  factor: number;
  /** enters other loads as well */
  shared?: boolean;
}

/** The departure of a balance from a straight line: half-width at any load, and the load over which it bends. */
export interface Departure {
  /** of several balances, which; "" for the only one */
  of: string;
  halfWidthGrams: number;
  capacityGrams: number;
}

/**
 * The departure of one balance at a load of x grams as one smooth curve, a·cos kx + b·sin kx with a and b independent: its
 * u is the half-width over √3 at every load, and two loads share it by cos k(x₁ − x₂), so that of a small difference of two
 * large loads little is left. k = 1.5π over the capacity: the curve turns once or twice over the range, as those of
 * electronic balances do (common practice; a straight slope is the span's affair).
 */
export function departureAt(
  inputs: Inputs,
  { of, halfWidthGrams, capacityGrams }: Departure,
  x: number,
): Term[] {
  const part = (name: string) =>
    inputs.once(`${of}linearity, ${name} part`, () =>
      inputs.rectangular(`${of}linearity, ${name} part`, "g", 0, halfWidthGrams),
    );
  const along = (1.5 * Math.PI * x) / capacityGrams;
  return [
    { input: part("even"), factor: Math.cos(along), shared: true },
    { input: part("odd"), factor: Math.sin(along), shared: true },
  ];
}
