import type { Colour } from "../../metals/metal.ts";
import type { Echo } from "./sound-speed.ts";

/** What a magnet does: nothing, a faint drift of a hung piece, a pull a hand feels, or it slides down slowly. */
export const magnetShows = ["none", "drag", "weak", "strong"] as const;

/** What a person found by another test than density. Uncertainties are standard uncertainties. */
export type Evidence =
  /** colour of the surface as it is, skin and all */
  | { kind: "colour"; colour: Colour }
  /** colour of the metal where the piece is worn or scratched already, so that a thin skin is gone */
  | { kind: "worn"; colour: Colour }
  /** the piece hung on a thread, or the magnet held well away from the balance, so that the balance cannot feel it */
  | { kind: "magnet"; shows: (typeof magnetShows)[number] }
  /** hung or balanced on a fingertip and tapped */
  | { kind: "ring"; heard: "clear" | "dull" }
  /** mass, and the volume of a simple outline that holds the whole piece */
  | { kind: "outline"; massG: number; outlineCm3: number; uOutlineCm3: number }
  | { kind: "conductivity"; percentIacs: number; uPercentIacs: number; celsius: number }
  /** longitudinal speed through the thickness, and the echo it was worked out from */
  | { kind: "sound"; mPerS: number; uMPerS: number; echo?: Echo }
  /** colour of clean metal under a scratch that goes through any skin */
  | { kind: "scratch"; colour: Colour }
  /** streak or drop on a touchstone, read against needles by a trained person */
  | { kind: "touch"; metal: "gold" | "silver" | "neither"; permille?: { low: number; high: number } };

export type EvidenceKind = Evidence["kind"];

/**
 * Every kind, from what an eye and a magnet show to what marks the piece: the order a bench should follow (common
 * practice). The catalogues hold name, limits and caution of each under `test`.
 */
export const evidenceKinds = [
  "colour",
  "worn",
  "magnet",
  "ring",
  "outline",
  "conductivity",
  "sound",
  "scratch",
  "touch",
] as const satisfies readonly EvidenceKind[];

/** Those that leave a mark. */
export const marking: ReadonlySet<EvidenceKind> = new Set(["scratch", "touch"]);

/** True for the name of a kind. */
export function isEvidenceKind(kind: string): kind is EvidenceKind {
  return evidenceKinds.some((one) => one === kind);
}
