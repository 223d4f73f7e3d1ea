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
  /** of every line with a valid reading, its claim excluded or not */
  mass_g: number;
  u_mass_g: number;
  /** of the lines whose fine metal counts */
  counted_mass_g: number;
  counted_u_mass_g: number;
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
  // one balance: its span and linearity are the same for all, so the uncertainties add straight
  const massOf = (some: readonly Addend[]) =>
    some.reduce((all, one) => ({ g: all.g + one.mass_g, u: all.u + one.u_mass_g }), { g: 0, u: 0 });
  const all = massOf(addends);
  const counting = massOf(addends.filter((one) => one.fine !== null));
  return {
    items,
    counted: fine.length,
    mass_g: all.g,
    u_mass_g: all.u,
    counted_mass_g: counting.g,
    counted_u_mass_g: counting.u,
    fine: preciousElements.flatMap((element) => {
      const of = fine.filter((one) => one.element === element).map(({ parts }) => parts);
      if (of.length === 0) return [];
      const { lowG, highG, expectedG, uG } = fineSum(of, confidence);
      return [{ element, fine_g: [lowG, highG] as [number, number], expected_g: expectedG, u_g: uG }];
    }),
  };
}
