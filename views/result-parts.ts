import type { CurvePoint } from "../calibration/distribution.ts";
import type { ComputeResponse, Conformity } from "../server/compute/contract.ts";
import type { Finding } from "../server/conformity/finding.ts";
import type { MetalBand } from "../server/station/view.ts";
import type { FindingView } from "./finding.tsx";
import type { Locale } from "./messages/language.ts";
import type { Band } from "./plots/bands.tsx";
import type { BudgetInput } from "./plots/budget.tsx";
import type { MeasuredCurve } from "./plots/density-plot.ts";
import { toldValue } from "./words/told.ts";

/** A finding as the page words it. */
export function findingViewOf(
  finding: Pick<Finding, "claim" | "state" | "because" | "lookAlikes" | "suspicions" | "wouldDecide">,
  bands: readonly MetalBand[],
  conformity?: Conformity,
): FindingView {
  const claimName = bands.find(({ id }) => id === finding.claim)?.name;
  return {
    state: finding.state,
    ...(claimName === undefined ? {} : { claimName }),
    because: finding.because,
    lookAlikes: finding.lookAlikes.map(({ id, name, whySays, separatedBy }) => ({
      id,
      name,
      whySays,
      separatedBy: separatedBy.says,
    })),
    suspicions: finding.suspicions,
    ...(finding.wouldDecide === undefined ? {} : { wouldDecide: finding.wouldDecide }),
    ...(conformity && { conformity }),
  };
}

/** The measured distribution as the density axis draws it. */
export function measuredOf(
  response: ComputeResponse,
  curve: readonly CurvePoint[],
  confidence: number,
): MeasuredCurve {
  return {
    value: response.density_g_cm3,
    u: response.u_g_cm3,
    interval: response.interval_g_cm3,
    confidence,
    curve: curve.map(({ gPerCm3, probabilityDensity }) => ({ gPerCm3, height: probabilityDensity })),
  };
}

/** The part of the axis worth seeing: a few percent about the value, and all of a wide interval. */
export function domainAround(response: ComputeResponse): readonly [number, number] {
  const reach = Math.max(0.07 * response.density_g_cm3, 2 * response.expanded_g_cm3);
  return [Math.max(0, response.density_g_cm3 - reach), response.density_g_cm3 + reach];
}

/** Bands worth drawing: the claim, everything alive, and the neighbours that were ruled out. */
export function bandsAround(
  bands: readonly MetalBand[],
  claim: string | undefined,
  response: ComputeResponse,
  locale: Locale = "en",
): Band[] {
  const alive = new Set(response.alive);
  const [from, to] = domainAround(response);
  return bands
    .filter(({ id, low, high }) => id === claim || alive.has(id) || (low < to && high > from))
    .map((band) => ({ ...band, name: toldValue(band.name, locale), alive: alive.has(band.id) }));
}

/** One input of the budget with its units written out. */
export function budgetInput(row: ComputeResponse["budget"][number], locale: Locale = "en"): BudgetInput {
  return {
    input: toldValue(row.input, locale),
    value: toldValue(`${Number(row.value.toPrecision(8))} ${row.unit}`, locale),
    u: toldValue(`${row.u.toPrecision(2)} ${row.unit}`, locale),
    contribution: row.contribution_g_cm3,
    share: row.share,
  };
}

/** The page of two bodies with what was measured of the whole: a stone in its setting, gold in quartz. */
export function twoBodiesHref(
  response: Pick<ComputeResponse, "mass_g" | "density_g_cm3" | "u_g_cm3">,
): string {
  return `/plan/two-bodies?${new URLSearchParams({
    question: "rest",
    massG: `${Number(response.mass_g.toPrecision(8))}`,
    density: `${Number(response.density_g_cm3.toPrecision(6))}`,
    uDensity: `${Number(response.u_g_cm3.toPrecision(2))}`,
  })}`;
}
