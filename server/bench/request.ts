import {
  assumedImmersedPerDry,
  assumedRepeatabilityPerReadability,
  type BalanceProfile,
  type ProfileNumber,
} from "../checks/balance-profile.ts";
import { temperatureAsked } from "../checks/profile-inputs.ts";
import type { Conditions } from "./conditions.ts";
import type { Role } from "./method.ts";
import { type Capture, type Piece, standing } from "./piece.ts";
import { readabilityGrams } from "./readability.ts";

const sqrt3 = Math.sqrt(3);
const readings = (captures: Capture[]) => ({ readings: captures.map(({ grams }) => grams) });

/** The readings of a piece under the keys of their method, or undefined while one is missing. */
function weighings(piece: Piece) {
  const of = (role: Role) => standing(piece, role);
  const dry = of("dry");
  const immersed = of("immersed");
  const rise = of("rise");
  const full = of("flask-full");
  const withPiece = of("flask-with-piece");
  if (dry.length === 0) return undefined;
  if (piece.method === "hung" && immersed.length > 0)
    return { method: piece.method, dry: readings(dry), immersed: readings(immersed), wet: immersed };
  if (piece.method === "displaced" && rise.length > 0)
    return { method: piece.method, dry: readings(dry), rise: readings(rise), wet: rise };
  if (piece.method === "flask" && full.length > 0 && withPiece.length > 0)
    return {
      method: piece.method,
      dry: readings(dry),
      flask: { full: readings(full), with_piece: readings(withPiece) },
      wet: [...full, ...withPiece],
    };
  return undefined;
}

/** Gives the profile of a balance, by its name and readability, as its passed checks make it. */
export type ProfileOf = (balance: string, readabilityGrams: number) => BalanceProfile;

/**
 * What a check found, undefined where the profile only assumes it. A failed check may make a number worse than the one
 * that is known without it, never better.
 */
function measured(number: ProfileNumber | undefined, known: number): ProfileNumber | undefined {
  if (number === undefined || !("check" in number.origin)) return undefined;
  return number.origin.passed || number.value > known ? number : undefined;
}

/**
 * The balance as the readings, its checks and the conditions describe it. Decimals of the readings say the
 * readability; a number that a check found counts before one of the conditions, and without either the bench takes two
 * thirds of d dry and twice that immersed (common practice).
 */
export function balanceFor(dry: Capture[], wet: Capture[], conditions: Conditions, profileOf?: ProfileOf) {
  const d = readabilityGrams(dry);
  const dImmersed = wet.length === 0 ? d : readabilityGrams(wet);
  const profile = profileOf?.(dry[0]?.balance ?? "typed", d);
  // Dry may have been weighed on one balance and immersed on another: each brings its own checks.
  const wetProfile = wet[0] ? profileOf?.(wet[0].balance, dImmersed) : profile;
  const statedDry = Number(conditions.repeatabilityGrams || d * assumedRepeatabilityPerReadability);
  const checkedDry = measured(profile?.repeatability, statedDry);
  const repeatability = checkedDry?.value ?? statedDry;
  const statedImmersed = Number(
    conditions.immersedRepeatabilityGrams ||
      Math.max(dImmersed * assumedRepeatabilityPerReadability, repeatability) * assumedImmersedPerDry,
  );
  const checkedImmersed = measured(wetProfile?.immersedRepeatability, statedImmersed);
  const statedLinearity = Number(conditions.linearityGrams);
  return {
    readability_g: d,
    immersed_readability_g: dImmersed,
    repeatability_g: repeatability,
    ...(checkedDry?.dof ? { repeatability_dof: checkedDry.dof } : {}),
    immersed_repeatability_g: checkedImmersed?.value ?? statedImmersed,
    ...(checkedImmersed?.dof ? { immersed_repeatability_dof: checkedImmersed.dof } : {}),
    linearity_g: Math.max(
      ...[profile, wetProfile].map(
        (one) => measured(one?.linearity, statedLinearity)?.value ?? statedLinearity,
      ),
    ),
  };
}

/** Temperature of the water: corrected by the thermometer's own check, or as shown within the half-width of the conditions. */
function temperatureFor(shownCelsius: number, conditions: Conditions, profile: BalanceProfile | undefined) {
  return (
    (profile && temperatureAsked(profile, shownCelsius)) ?? {
      temperature_c: shownCelsius,
      temperature_u_c: Number(conditions.thermometerHalfWidthCelsius) / sqrt3,
    }
  );
}

/**
 * What the bench asks `compute` for this piece, in the published form, or undefined while a reading or the water
 * temperature is missing. Readings go in as exact decimal text in g.
 */
export function requestFor(piece: Piece, conditions: Conditions, profileOf?: ProfileOf) {
  const weighed = weighings(piece);
  if (weighed === undefined || piece.waterCelsius === undefined) return undefined;
  const { wet, ...readingsByRole } = weighed;
  const dry = standing(piece, "dry");
  const profile = profileOf?.(dry[0]?.balance ?? "typed", readabilityGrams(dry));
  return {
    id: piece.id,
    ...readingsByRole,
    liquid: {
      kind: "water" as const,
      ...temperatureFor(Number(piece.waterCelsius), conditions, profile),
      purity: conditions.purity,
      dissolved_solids_mg_l: Number(conditions.dissolvedSolidsMgPerL),
    },
    air: { altitude_m: Number(conditions.altitudeMetres) },
    balance: balanceFor(dry, wet, conditions, profileOf),
    hanger: { wire_mm: Number(conditions.wireMillimetres), zeroed: "immersed" as const },
    bubble_allowance_mg: Number(conditions.bubbleAllowanceMg),
    pieces: 1,
    ...(piece.claim === undefined ? {} : { claim: piece.claim, ...ruleOf(piece) }),
    confidence: Number(piece.agreed?.confidence_percent ?? conditions.confidencePercent) / 100,
  };
}

/** The rule agreed when the piece was opened: what the settings say by now would be chosen after the value is known. */
function ruleOf({ agreed }: Piece) {
  if (agreed === undefined || agreed.kind === "none") return {};
  return { decision_rule: { kind: agreed.kind, multiple: Number(agreed.multiple) } };
}
