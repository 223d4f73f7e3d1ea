import { recordedDensity } from "../conformity/recorded-density.ts";
import { commonShare, fineSum, type LotFine, lotFine } from "../lots/lot-fine.ts";
import { builtIn, type Library } from "../metals/library.ts";
import type { Statement } from "../weighing/statement-shape.ts";
import { type ComputeRequest, computeRequest } from "./contract.ts";

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
  fine: { element: "Au" | "Ag"; fine_g: [number, number]; expected_g: number; u_g: number }[];
}

const elements = { gold: "Au", silver: "Ag" } as const;

/**
 * The total of many lines. What every line has in common (balance, water, thermometer, the free rest of the alloy) adds
 * end by end, what each reading brought of its own adds in squares. A line with a stop check or an excluded claim counts
 * for nothing.
 */
export function totalOf(items: number, answered: readonly Counted[], library: Library = builtIn): Total {
  const sound = answered.filter(
    ({ statement: { conformity } }) =>
      conformity.state !== "no-valid-reading" && conformity.state !== "excluded",
  );
  const fine = sound.flatMap((one) => fineOf(one, library) ?? []);
  const weighed = answered.filter(({ statement }) => statement.conformity.state !== "no-valid-reading");
  const sum = (of: (statement: Statement) => number) =>
    weighed.reduce((total, { statement }) => total + of(statement), 0);
  return {
    items,
    counted: fine.length,
    mass_g: sum(({ mass_g }) => mass_g),
    // one balance: its span and linearity are the same for all, so the uncertainties add straight
    u_mass_g: sum(({ u_mass_g }) => u_mass_g),
    fine: (["gold", "silver"] as const).flatMap((metal) => {
      const of = fine.filter((one) => one.metal === metal);
      return of.length === 0 ? [] : [summed(elements[metal], of)];
    }),
  };
}

function fineOf({ request, statement }: Counted, library: Library): LotFine | undefined {
  const { claim } = statement.conformity;
  const family = claim === null || !library.has(claim) ? undefined : library.metal(claim).family;
  if (family !== "gold" && family !== "silver") return undefined;
  const asked: ComputeRequest = computeRequest.parse(request);
  const { liquid, balance, confidence } = asked;
  return (
    lotFine({
      metal: family,
      measured: recordedDensity(statement, confidence),
      celsius: liquid?.temperature_c ?? 20,
      dryG: statement.mass_g,
      stepG: balance.readability_g,
      share: commonShare(statement.budget),
    }) ?? undefined
  );
}

function summed(element: "Au" | "Ag", of: readonly LotFine[]): Total["fine"][number] {
  const { lowG, highG } = fineSum(of);
  const expected = of.reduce((sum, { middle }) => sum + (middle.lowG + middle.highG) / 2, 0);
  // the interval of a sum is taken as rectangular: the free rest of the alloy rules it
  return { element, fine_g: [lowG, highG], expected_g: expected, u_g: (highG - lowG) / 2 / Math.sqrt(3) };
}
