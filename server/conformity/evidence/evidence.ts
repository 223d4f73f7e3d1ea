import type { Colour } from "../../metals/metal.ts";
import type { Echo } from "./sound-speed.ts";

/** What a person found by another test than density. Uncertainties are standard uncertainties. */
export type Evidence =
  /** the piece hung on a thread, or the magnet held well away from the balance, so that the balance cannot feel it */
  | { kind: "magnet"; shows: "none" | "weak" | "strong" }
  | { kind: "conductivity"; percentIacs: number; uPercentIacs: number; celsius: number }
  /** longitudinal speed through the thickness, and the echo it was worked out from */
  | { kind: "sound"; mPerS: number; uMPerS: number; echo?: Echo }
  /** hung or balanced on a fingertip and tapped */
  | { kind: "ring"; heard: "clear" | "dull" }
  /** colour of clean metal under a scratch that goes through any skin */
  | { kind: "scratch"; colour: Colour }
  /** streak or drop on a touchstone, read against needles by a trained person */
  | { kind: "touch"; metal: "gold" | "silver" | "neither"; permille?: { low: number; high: number } }
  /** mass, and the volume of a simple outline that holds the whole piece */
  | { kind: "outline"; massG: number; outlineCm3: number; uOutlineCm3: number };

export type EvidenceKind = Evidence["kind"];

/** Every kind, from harmless to harming: the order a bench should follow (common practice). */
export const evidenceKinds: readonly {
  kind: EvidenceKind;
  name: string;
  harmless: boolean;
  /** what it can never show */
  blindTo: string;
  caution?: string;
}[] = [
  {
    kind: "outline",
    name: "mass and outline",
    harmless: true,
    blindTo: "anything of the right density",
  },
  {
    kind: "magnet",
    name: "magnet",
    harmless: true,
    blindTo: "every metal but iron, nickel and cobalt",
    caution:
      "Strong magnets pinch fingers, disturb pacemakers, and shift a balance that stands near: hang the piece away from it.",
  },
  {
    kind: "ring",
    name: "ring",
    harmless: true,
    blindTo: "other alloys that ring; a clear ring proves no metal",
  },
  {
    kind: "conductivity",
    name: "conductivity",
    harmless: true,
    blindTo: "what lies deeper than the coil sees, a few tenths of a millimetre",
  },
  {
    kind: "sound",
    name: "sound speed",
    harmless: true,
    blindTo: "metals of the same speed; needs a known thickness and a drop of couplant",
  },
  {
    kind: "scratch",
    name: "colour under a scratch",
    harmless: false,
    blindTo: "a skin thicker than the scratch",
    caution: "It marks the piece for good: only on scrap, and with the owner's consent.",
  },
  {
    kind: "touch",
    name: "touch or acid",
    harmless: false,
    blindTo: "anything under the skin",
    caution:
      "For a trained person: acids burn eyes, hands and lungs. Wear goggles and gloves, work in a fume cupboard, keep away from bleach, never on porous stones, never before weighing.",
  },
];
