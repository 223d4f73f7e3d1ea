import { type Message, message } from "../../../calibration/message.ts";
import { builtIn, type Library } from "../library.ts";
import { effectiveThicknessMm, type Specification } from "./specification.ts";

/** What was measured on the piece; standard uncertainties. */
export interface MeasuredPiece {
  massG: number;
  uMassG: number;
  diameterMm?: number;
  uDiameterMm?: number;
  /** at the rim */
  thicknessMm?: number;
  uThicknessMm?: number;
}

export type ComparisonState = "within" | "outside" | "undecided" | "worn";

/** One dimension against its specification. */
export interface Comparison {
  what: "mass" | "diameter" | "thickness";
  measured: number;
  unit: "g" | "mm";
  allowed: readonly [number, number];
  state: ComparisonState;
  message: Message;
}

/** Where a law states no tolerance, mass may differ by this share (common practice for struck coins). */
const unstatedMassPermille = 5;
/** A caliper over a worn or nicked edge (common practice). */
const diameterSlackMm = 0.3;
/** Circulated coins lose up to 3 % of their mass (common practice). */
const wornShare = 0.03;
const coverage = 2;

function stateOf(value: number, u: number, [low, high]: readonly [number, number]): ComparisonState {
  if (value + coverage * u < low || value - coverage * u > high) return "outside";
  return value - coverage * u >= low && value + coverage * u <= high ? "within" : "undecided";
}

function comparison(
  what: Comparison["what"],
  unit: Comparison["unit"],
  measured: number,
  allowed: readonly [number, number],
  state: ComparisonState,
): Comparison {
  const [low, high] = [+allowed[0].toPrecision(6), +allowed[1].toPrecision(6)];
  return {
    what,
    measured,
    unit,
    allowed,
    state,
    message: message("specification.compared", { what, measured, unit, state, low, high }),
  };
}

/**
 * A piece against its specification: mass with its tolerance and wear, diameter, and the rim, which cannot be thinner
 * than an even disc of the metal would be. Only what was measured is compared.
 */
export function compareWith(
  spec: Specification,
  piece: MeasuredPiece,
  library: Library = builtIn,
): Comparison[] {
  const rows = [mass(spec, piece)];
  if (piece.diameterMm !== undefined && spec.diameterMm !== undefined) {
    const allowed = [spec.diameterMm - diameterSlackMm, spec.diameterMm + diameterSlackMm] as const;
    const state = stateOf(piece.diameterMm, piece.uDiameterMm ?? 0.02, allowed);
    rows.push(comparison("diameter", "mm", piece.diameterMm, allowed, state));
  }
  if (piece.thicknessMm !== undefined && spec.diameterMm !== undefined) rows.push(rim(spec, piece, library));
  return rows;
}

function mass(spec: Specification, { massG, uMassG }: MeasuredPiece): Comparison {
  const tolerance = spec.massToleranceG ?? (spec.massG * unstatedMassPermille) / 1000;
  const allowed = [spec.massG - tolerance, spec.massG + tolerance] as const;
  const state = stateOf(massG, uMassG, allowed);
  const wornTo = spec.leastCurrentG ?? spec.massG * (1 - wornShare);
  const worn = state === "outside" && massG < allowed[0] && massG + coverage * uMassG >= wornTo;
  return comparison("mass", "g", massG, allowed, worn ? "worn" : state);
}

/** The thinnest rim that could hold the mass: an even disc of the densest the metal may be. */
function rim(spec: Specification, piece: MeasuredPiece, library: Library): Comparison {
  const { high } = library.metal(spec.metal).densityGPerCm3;
  const least = effectiveThicknessMm(piece.massG, high, piece.diameterMm ?? spec.diameterMm!);
  const most = spec.thicknessMm ? spec.thicknessMm * 1.15 : least * 1.8;
  const allowed = [least, most] as const;
  const state = stateOf(piece.thicknessMm!, piece.uThicknessMm ?? 0.02, allowed);
  return comparison("thickness", "mm", piece.thicknessMm!, allowed, state);
}
