import type { Conditions } from "./conditions.ts";
import type { Role } from "./method.ts";
import { type Capture, type Piece, standing } from "./piece.ts";
import { readabilityGrams } from "./readability.ts";

const sqrt3 = Math.sqrt(3);
/** Standard deviation of one reading in units of d for a balance without its own test: common practice. */
const repeatabilityPerD = 2 / 3;
/** An immersed reading scatters more than a dry one (wire, draught in the water): common practice. */
const immersedPerDry = 2;

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

/**
 * The balance as the readings and the conditions describe it. Decimals of the readings say the readability; without a
 * repeatability test of its own the bench takes two thirds of d dry and twice that immersed (common practice).
 */
export function balanceFor(dry: Capture[], wet: Capture[], conditions: Conditions) {
  const d = readabilityGrams(dry);
  const dImmersed = wet.length === 0 ? d : readabilityGrams(wet);
  const repeatability = Number(conditions.repeatabilityGrams || d * repeatabilityPerD);
  const immersed = Math.max(dImmersed * repeatabilityPerD, repeatability) * immersedPerDry;
  return {
    readability_g: d,
    immersed_readability_g: dImmersed,
    repeatability_g: repeatability,
    immersed_repeatability_g: Number(conditions.immersedRepeatabilityGrams || immersed),
    linearity_g: Number(conditions.linearityGrams),
  };
}

/**
 * What the bench asks `compute` for this piece, in the published form, or undefined while a reading or the water
 * temperature is missing. Readings go in as exact decimal text in g.
 */
export function requestFor(piece: Piece, conditions: Conditions) {
  const weighed = weighings(piece);
  if (weighed === undefined || piece.waterCelsius === undefined) return undefined;
  const { wet, ...readingsByRole } = weighed;
  return {
    id: piece.id,
    ...readingsByRole,
    liquid: {
      kind: "water" as const,
      temperature_c: Number(piece.waterCelsius),
      temperature_u_c: Number(conditions.thermometerHalfWidthCelsius) / sqrt3,
      purity: conditions.purity,
      dissolved_solids_mg_l: Number(conditions.dissolvedSolidsMgPerL),
    },
    air: { altitude_m: Number(conditions.altitudeMetres) },
    balance: balanceFor(standing(piece, "dry"), wet, conditions),
    hanger: { wire_mm: Number(conditions.wireMillimetres), zeroed: "immersed" as const },
    bubble_allowance_mg: Number(conditions.bubbleAllowanceMg),
    pieces: 1,
    ...(piece.claim === undefined ? {} : { claim: piece.claim }),
    confidence: Number(conditions.confidencePercent) / 100,
  };
}
