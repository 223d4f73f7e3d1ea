import { mean } from "../../../calibration/mean.ts";
import type { Param } from "../../../calibration/message.ts";
import type { MassUnit } from "../../../calibration/units.ts";
import { toGrams } from "../../../calibration/units.ts";
import { solidMetal } from "../../metals/possible-densities.ts";
import { type MethodName, methods } from "../../methods/index.ts";

/** A reading as it was shown or typed, with its time (ISO 8601). Any capture of the bench fits. */
export interface SituationReading {
  at: string;
  text: string;
  unit: MassUnit;
  /** the display showed no other line since the capture before; left out where nobody watched it */
  unmoved?: true;
  /** the display was still creeping when it was taken */
  crept?: true;
  /** the most that a creep may have brought after it was taken, which nothing excluded, g */
  possibleGrams?: number;
  /** of a live reading: so far the display moved on after the last reading was taken while its load stayed */
  movedOn?: { grams: number; role: "dry" | "wet" };
}

/** What the piece is said to be, and its density band in g/cm³. */
export interface SituationClaim {
  metal: Param;
  lowGPerCm3: number;
  highGPerCm3: number;
}

/**
 * What is known of a piece at any moment of its weighing. Lists are in the order taken and hold only readings that
 * count; whatever is not known yet is left out, and the checks that need it say nothing.
 */
export interface Situation {
  method: MethodName;
  /** piece alone, dry, before wetting */
  dry: readonly SituationReading[];
  /** the last reading of the method, in the liquid */
  wet: readonly SituationReading[];
  /** a vessel full of liquid alone, where the method weighs one */
  flaskFull?: readonly SituationReading[];
  /** piece alone again after drying */
  dryAfter?: readonly SituationReading[];
  /** empty hanger in the liquid at its mark, before and after the immersions */
  zeros?: readonly SituationReading[];
  /** the live readings of the immersion that is going on */
  live?: readonly SituationReading[];
  /** dry and wet readings were taken in pairs */
  paired?: boolean;
  /** density of the liquid, g/cm³; water where it is left out */
  liquidGPerCm3?: number;
  waterCelsius?: number;
  /** kept by the method's own form */
  stated?: Readonly<Record<string, unknown>> | undefined;
  roomCelsius?: number;
  /** what sensors in the liquid showed with the readings that count, in order; which were silent; whether a temperature was typed too */
  sensors?: {
    liquid: readonly {
      sensor: string;
      celsius: number;
      halfWidth?: number;
      /** decimal text and unit as sent */
      shown?: { text: string; unit: string };
    }[];
    silent: readonly string[];
    typed: boolean;
  };
  claim?: SituationClaim;
  /** mass the ticket or the specification gives, g, and where it comes from ("ticket 31", "specification") */
  expectedMass?: { lowGrams: number; highGrams: number; from: string };
  /**
   * the hanger's own reading in the liquid, g, with a sinker where it carries one, when it was weighed in instead of
   * zeroed: hung, the immersed readings hold it
   */
  hangerGrams?: number;
  /** density and expanded uncertainty already worked out from these readings */
  density?: { valueGPerCm3: number; expandedGPerCm3: number };
  /** share of the variance, 0 to 1, that more repeats would lessen */
  repeatsShare?: number;
  balance: {
    readabilityGrams: number;
    /** standard deviation of one dry reading */
    repeatabilityGrams: number;
    /** standard deviation of one immersed reading */
    immersedRepeatabilityGrams: number;
    /** degrees of freedom both were found with; without, they are taken as known */
    repeatabilityDof?: number;
    immersedRepeatabilityDof?: number;
    /** nobody stated or measured it */
    repeatabilityAssumed?: boolean;
    immersedRepeatabilityAssumed?: boolean;
    /** step of the display at the immersed load, where it differs */
    immersedReadabilityGrams?: number;
  };
}

export function grams(reading: SituationReading): number {
  return Number(toGrams(reading.text, reading.unit));
}

export function seconds(reading: SituationReading): number {
  return Date.parse(reading.at) / 1000;
}

/** Mean of readings in g, or undefined when there is none. */
export function meanGrams(readings: readonly SituationReading[] | undefined): number | undefined {
  if (readings === undefined || readings.length === 0) return undefined;
  return mean(readings.map(grams));
}

/** Displaced mass of every immersion in g, in the order taken; empty while the dry reading or the flask is missing. */
export function displacedInOrder({ method, dry, wet, flaskFull, hangerGrams = 0 }: Situation): number[] {
  const piece = meanGrams(dry);
  const full = meanGrams(flaskFull);
  const { wetReading } = methods[method];
  if (wetReading === "displaced") return wet.map(grams);
  if (piece === undefined) return [];
  if (wetReading === "remaining") return wet.map((reading) => piece + hangerGrams - grams(reading));
  return full === undefined ? [] : wet.map((reading) => full + piece - grams(reading));
}

/**
 * Scatter to expect of one reading in g: the balance's repeatability and the two roundings, at zero and at load,
 * each d/√12 (EURAMET cg-18).
 */
export function scatterGrams(situation: Situation, role: "dry" | "wet"): number {
  const { readabilityGrams, repeatabilityGrams, immersedRepeatabilityGrams } = situation.balance;
  return Math.hypot(
    role === "dry" ? repeatabilityGrams : immersedRepeatabilityGrams,
    readabilityGrams / Math.sqrt(6),
  );
}

/** Dry mass, mean displaced mass and their rough density, or undefined while something is missing. */
export function soFar(
  situation: Situation,
): { dryGrams: number; displacedGrams: number; gPerCm3: number } | undefined {
  const dryGrams = meanGrams(situation.dry);
  const displaced = displacedInOrder(situation);
  if (dryGrams === undefined || displaced.length === 0) return undefined;
  const displacedGrams = mean(displaced);
  return {
    dryGrams,
    displacedGrams,
    gPerCm3: roughDensity(dryGrams, displacedGrams, situation.liquidGPerCm3),
  };
}

/**
 * Density in g/cm³ good to about half a percent: water, where nothing else is said, taken as 0.998 and air as 0.0012 g/cm³. A slip must be
 * recognised before the water temperature is known; nothing measured is ever reported from here.
 */
export function roughDensity(dryGrams: number, displacedGrams: number, liquidGPerCm3 = 0.998): number {
  return (dryGrams / displacedGrams) * (liquidGPerCm3 - 0.0012) + 0.0012;
}

export function isSolidMetal(gPerCm3: number): boolean {
  return gPerCm3 >= solidMetal.low && gPerCm3 <= solidMetal.high;
}

/** Within the claim's band widened by a fraction of itself, or any solid metal when nothing is claimed. */
export function fitsClaim(situation: Situation, gPerCm3: number, widened: number): boolean {
  const { claim } = situation;
  if (claim === undefined) return isSolidMetal(gPerCm3);
  return gPerCm3 >= claim.lowGPerCm3 * (1 - widened) && gPerCm3 <= claim.highGPerCm3 * (1 + widened);
}

/** True where the last reading is what the hung piece still weighs. */
export function hangs({ method }: Situation): boolean {
  return methods[method].wetReading === "remaining";
}

/** True where the last reading is the displaced mass itself. */
export function rises({ method }: Situation): boolean {
  return methods[method].wetReading === "displaced";
}

/** How far the zero moved while the piece was in the liquid, g; 0 where it was not looked at twice. */
export function zeroMoved({ zeros = [] }: Situation): number {
  return zeros.length < 2 ? 0 : grams(zeros.at(-1)!) - grams(zeros[0]!);
}
