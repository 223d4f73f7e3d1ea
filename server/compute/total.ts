import type { FineParts } from "../metals/fineness/fine-parts.ts";
import { fineSum } from "../metals/fineness/fine-sum.ts";
import { type PreciousElement, preciousElements } from "../metals/fineness/precious-element.ts";
import type { Statement } from "../weighing/statement-shape.ts";
import { computeRequest } from "./contract.ts";

/** What one answered line adds to a total, as plain data. */
export interface Addend {
  mass_g: number;
  u_mass_g: number;
  /** null where the line's fine metal does not count, or there is none */
  fine: { element: PreciousElement; parts: FineParts } | null;
  /** that the line asked for */
  confidence: number;
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

/** What a line adds; with a stop check nothing, with an excluded claim no fine metal. */
export function addendOf(request: unknown, { mass_g, u_mass_g, conformity, fineness }: Statement): Addend {
  const { confidence } = computeRequest.parse(request);
  if (conformity.state === "no-valid-reading") return { mass_g: 0, u_mass_g: 0, fine: null, confidence };
  const fine = fineness?.parts ? { element: fineness.element, parts: fineness.parts } : null;
  return { mass_g, u_mass_g, fine, confidence };
}

/** The total of many lines: fine mass as `fineSum` adds it, at the lowest confidence that a line asked for. */
export function totalOf(items: number, addends: readonly Addend[]): Total {
  const fine = addends.flatMap((one) => one.fine ?? []);
  const confidence = addends.reduce(
    (least, one) => Math.min(least, one.confidence),
    Number.POSITIVE_INFINITY,
  );
  const sum = (of: (addend: Addend) => number) => addends.reduce((total, one) => total + of(one), 0);
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
