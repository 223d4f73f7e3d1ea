import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import {
  type Conformity,
  type ConformityContext,
  conformityFor,
} from "../../../server/conformity/conformity.ts";
import { builtIn } from "../../../server/metals/library.ts";

/** What a measured density says about a claim, in the built-in library at 95.45 % and 20 °C unless told otherwise. */
export function stands(
  measured: MeasuredDensity,
  claim: string | undefined,
  context: Partial<ConformityContext> = {},
): Conformity {
  return conformityFor(measured, { library: builtIn, confidence: 0.9545, celsius: 20, claim, ...context });
}

/** Ids of what is left. */
export const left = ({ notExcluded }: Conformity) => notExcluded.map(({ metal }) => metal.id);
