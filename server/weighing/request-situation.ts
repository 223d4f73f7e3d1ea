import { z } from "zod";
import { lastPlace } from "../../calibration/decimal.ts";
import { driftFit } from "../../calibration/drift.ts";
import { fillingOf } from "../../calibration/flask.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { type Lifted, readingTexts } from "../../calibration/series.ts";
import { gramsPerUnit, type MassUnit } from "../../calibration/units.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import { seriesOf } from "../compute/series.ts";
import type { Library } from "../metals/library.ts";
import { methods } from "../methods/index.ts";
import { grams, type Situation, type SituationReading } from "./checks/situation.ts";
import { situationClaim } from "./situation-claim.ts";

/** The series of a request as far as checks need it. */
interface GivenSeries {
  readings?: string[] | undefined;
  timed?: NonNullable<Parameters<typeof seriesOf>[0]["timed"]> | undefined;
  lifted?: Lifted | undefined;
  unit: MassUnit;
  zero_before?: string | undefined;
  zero_after?: string | undefined;
  balance?: GivenBalance | undefined;
}

/**
 * What the checks on the procedure are told of a request: its readings in order, without times. Undefined for a method
 * whose checks would need a liquid.
 */
export function situationOfRequest(request: ComputeRequest, library: Library): Situation | undefined {
  const { method, dry, balance, hanger, liquid, claim } = request;
  if (method !== "hung" && method !== "displaced" && method !== "flask") return undefined;
  const loads = methods[method].loads.map(({ key }) => seriesAt(request, key));
  const wet = loads.at(-1);
  const claimed = situationClaim(claim, library);
  const hangerAlone = hanger?.zeroed === "weighed" ? mean(hanger.in_liquid) : undefined;
  const inAir = mean(hanger?.in_air) ?? 0;
  return {
    method,
    dry: readingsOf(dry),
    wet: readingsOf(wet),
    ...(method === "flask" ? { flaskFull: readingsOf(loads[1]) } : {}),
    zeros: zerosOf(wet),
    paired: request.paired,
    ...(hangerAlone === undefined ? {} : { hangerGrams: hangerAlone - inAir }),
    ...(liquid?.kind === "water" ? { waterCelsius: liquid.temperature_c } : {}),
    ...(liquid?.kind === "stated" ? { liquidGPerCm3: liquid.density_g_cm3 } : {}),
    ...(claimed && { claim: claimed }),
    balance: withFilling(stepsOf(withSecond(balance, wet?.balance)), request),
  };
}

/** The balance of the dry readings with what is known of the wet ones where those were taken on another. */
function withSecond(first: GivenBalance, second: GivenBalance | undefined): GivenBalance {
  if (!second) return first;
  return {
    ...first,
    immersed_readability_g: second.immersed_readability_g ?? second.readability_g,
    immersed_repeatability_g: second.immersed_repeatability_g ?? second.repeatability_g,
    immersed_repeatability_dof: second.immersed_repeatability_dof ?? second.repeatability_dof,
    immersed_repeatability_assumed: second.immersed_repeatability_assumed ?? second.repeatability_assumed,
  };
}

/** Two fillings of a flask scatter beside the balance. */
function withFilling(balance: Situation["balance"], request: ComputeRequest): Situation["balance"] {
  if (request.method !== "flask") return balance;
  const stated = z.object({ filling_repeatability_g: z.number() }).safeParse(Reflect.get(request, "flask"));
  const filling = fillingOf(
    stated.success ? stated.data.filling_repeatability_g : "usual",
    request.balance.immersed_repeatability_g,
  );
  const scatter = Math.hypot(balance.immersedRepeatabilityGrams, filling);
  return { ...balance, immersedRepeatabilityGrams: scatter };
}

interface GivenBalance {
  readability_g: number;
  repeatability_g: number;
  repeatability_dof?: number | undefined;
  immersed_readability_g?: number | undefined;
  immersed_repeatability_g?: number | undefined;
  immersed_repeatability_dof?: number | undefined;
  repeatability_assumed?: boolean | undefined;
  immersed_repeatability_assumed?: boolean | undefined;
}

/** A balance of a request as the checks know it. */
export function stepsOf(balance: GivenBalance): Situation["balance"] {
  return omitUndefined({
    readabilityGrams: balance.readability_g,
    repeatabilityGrams: balance.repeatability_g,
    immersedRepeatabilityGrams: balance.immersed_repeatability_g ?? balance.repeatability_g,
    repeatabilityDof: balance.repeatability_dof,
    immersedRepeatabilityDof:
      balance.immersed_repeatability_g === undefined
        ? balance.repeatability_dof
        : balance.immersed_repeatability_dof,
    repeatabilityAssumed: balance.repeatability_assumed,
    immersedRepeatabilityAssumed:
      balance.immersed_repeatability_g === undefined
        ? balance.repeatability_assumed
        : balance.immersed_repeatability_assumed,
    immersedReadabilityGrams: balance.immersed_readability_g,
  });
}

function seriesAt(request: ComputeRequest, path: readonly string[]): GivenSeries | undefined {
  let at: unknown = request;
  for (const key of path) at = typeof at === "object" && at !== null ? Reflect.get(at, key) : undefined;
  return at as GivenSeries | undefined;
}

function readingsOf(series: GivenSeries | undefined): SituationReading[] {
  if (!series) return [];
  const { unit, readings = [] } = series;
  const texts = series.timed ? aboutTheDrift(series) : readings;
  return texts.map((text) => ({ at: "", text, unit }));
}

/** The readings of timed looks less their zero and its drift, in the series' unit; as read where no fit is possible. */
function aboutTheDrift(given: GivenSeries): string[] {
  const timed = seriesOf(given, "wet");
  if (!("timed" in timed)) return [];
  const decimals = Math.max(0, -Math.round(Math.log10(lastPlace(readingTexts(timed)[0] ?? "0"))));
  try {
    const { grams: load, residuals } = driftFit(timed);
    return residuals.map((residual) =>
      ((load + residual) / Number(gramsPerUnit[timed.unit])).toFixed(decimals),
    );
  } catch (error) {
    if (error instanceof Refusal) return [...readingTexts(timed)];
    throw error;
  }
}

function zerosOf(series: GivenSeries | undefined): SituationReading[] {
  if (!series) return [];
  const { unit, zero_before, zero_after } = series;
  return [zero_before, zero_after].flatMap((text) => (text === undefined ? [] : [{ at: "", text, unit }]));
}

function mean(series: GivenSeries | undefined): number | undefined {
  const readings = readingsOf(series);
  return readings.length === 0
    ? undefined
    : readings.reduce((sum, reading) => sum + grams(reading), 0) / readings.length;
}
