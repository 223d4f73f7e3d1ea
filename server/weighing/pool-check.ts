import type { DensityResult } from "../../calibration/density-result.ts";
import type { MeasurementCheck } from "../../calibration/measurement-check.ts";
import { message } from "../../calibration/message.ts";
import { couldHide, oddByDefault } from "../../calibration/pool.ts";
import { bandAt } from "../conformity/exclusion.ts";
import { askedFirst } from "../conformity/plan/plain-answer.ts";
import { called } from "../metals/called.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";

/** How many kinds of odd pieces are named. */
const kindsNamed = 4;

/**
 * What a pool of pieces under a claim could hide: of an odd piece of the stated density, and of each kind that is asked
 * about first beside the claim, how many the others could make up for anywhere in the claim's band.
 */
export function poolOfClaim(
  { code, params, severity }: MeasurementCheck,
  result: DensityResult,
  { claimed, oddGPerCm3, library }: { claimed: Metal; oddGPerCm3: number | undefined; library: Library },
): MeasurementCheck {
  const { pieces, liquidCelsius } = result;
  const { low, high } = bandAt(claimed, liquidCelsius);
  const hidden = (odd: number) => couldHide(result, pieces, odd, { lowGPerCm3: low, highGPerCm3: high });
  const odd = oddGPerCm3 ?? oddByDefault * result.gPerCm3;
  const kinds = askedFirst(claimed, library)
    .map((metal) => ({ metal, n: hidden(bandAt(metal, liquidCelsius).nominal) }))
    .filter(({ n }) => n > 0)
    .sort((a, b) => a.n - b.n)
    .slice(0, kindsNamed)
    .map(({ metal, n }) => message("plan.hidden-kind", { n, metal: called(metal) }));
  return {
    code,
    severity,
    params: {
      ...params,
      hidden: hidden(odd),
      odd_g_cm3: odd,
      claimed: kinds.length > 0 ? "yes" : "no",
      kinds,
    },
  };
}
