import { fineSum } from "../metals/fineness/fine-sum.ts";
import { type PreciousElement, preciousElements } from "../metals/fineness/precious-element.ts";
import type { Statement } from "../weighing/statement-shape.ts";
import { computeRequest } from "./contract.ts";

/** One answered line, as a sum needs it. */
export interface Counted {
  request: unknown;
  statement: Statement;
}

/** Sums over lines weighed on one balance in one water. Masses in g; `u` are standard uncertainties. */
export interface Total {
  /** lines that were read, and those of them whose fine metal counts */
  items: number;
  counted: number;
  mass_g: number;
  u_mass_g: number;
  fine: { element: PreciousElement; fine_g: [number, number]; expected_g: number; u_g: number }[];
}

/**
 * The total of many lines: fine mass as `fineSum` adds it, at the lowest confidence that a line asked for. A line with a
 * stop check or an excluded claim counts for nothing.
 */
export function totalOf(items: number, answered: readonly Counted[]): Total {
  const weighed = answered.filter(({ statement }) => statement.conformity.state !== "no-valid-reading");
  const fine = weighed.flatMap(({ statement: { fineness } }) =>
    fineness?.parts ? [{ element: fineness.element, parts: fineness.parts }] : [],
  );
  const confidence = Math.min(...answered.map(({ request }) => computeRequest.parse(request).confidence));
  const sum = (of: (statement: Statement) => number) =>
    weighed.reduce((total, { statement }) => total + of(statement), 0);
  return {
    items,
    counted: fine.length,
    mass_g: sum(({ mass_g }) => mass_g),
    // one balance: its span and linearity are the same for all, so the uncertainties add straight
    u_mass_g: sum(({ u_mass_g }) => u_mass_g),
    fine: preciousElements.flatMap((element) => {
      const of = fine.filter((one) => one.element === element).map(({ parts }) => parts);
      if (of.length === 0) return [];
      const { lowG, highG, expectedG, uG } = fineSum(of, confidence);
      return [{ element, fine_g: [lowG, highG] as [number, number], expected_g: expectedG, u_g: uG }];
    }),
  };
}
