import type { ToldPair } from "../../told-pair.ts";

/** What other tests are blind to, what they contradict, and what is refused of their entries. */
export const evidence: readonly ToldPair[] = [
  ["anything of the right density", "alles von der richtigen Dichte"],
  ["every metal but iron, nickel and cobalt", "jedes Metall außer Eisen, Nickel und Kobalt"],
  [
    "Strong magnets pinch fingers, disturb pacemakers, and shift a balance that stands near: hang the piece away from it.",
    "Starke Magnete klemmen Finger, stören Herzschrittmacher und verstellen eine nahe Waage: das Stück fern von ihr aufhängen.",
  ],
  [
    "other alloys that ring; a clear ring proves no metal",
    "andere klingende Legierungen; ein heller Klang beweist kein Metall",
  ],
  [
    "what lies deeper than the coil sees, a few tenths of a millimetre",
    "was tiefer liegt, als die Spule sieht, einige zehntel Millimeter",
  ],
  [
    "metals of the same speed; needs a known thickness and a drop of couplant",
    "Metalle gleicher Geschwindigkeit; braucht eine bekannte Dicke und einen Tropfen Koppelmittel",
  ],
  ["a skin thicker than the scratch", "eine Haut, dicker als der Kratzer"],
  [
    "It marks the piece for good: only on scrap, and with the owner's consent.",
    "Es zeichnet das Stück für immer: nur an Bruch und mit Zustimmung des Eigentümers.",
  ],
  ["anything under the skin", "alles unter der Haut"],
  [
    "For a trained person: acids burn eyes, hands and lungs. Wear goggles and gloves, work in a fume cupboard, keep away from bleach, never on porous stones, never before weighing.",
    "Für geschulte Personen: Säuren verätzen Augen, Hände und Lunge. Brille und Handschuhe tragen, im Abzug arbeiten, von Bleiche fernhalten, nie auf porösen Steinen, nie vor dem Wiegen.",
  ],
  ["straight through, a probe on each side", "geradeaus hindurch, auf jeder Seite ein Kopf"],
  ["there and back, or from one echo to the next", "hin und zurück, oder von einem Echo zum nächsten"],
  ["from one echo to the next but one", "von einem Echo zum übernächsten"],
  [
    "The piece displaced {n} cm³ but its outline holds only {n1} cm³: bubbles, a touching hanger or a wrong dimension; weigh again before any finding.",
    "Das Stück verdrängte {n} cm³, sein Umriss fasst aber nur {n1} cm³: Blasen, eine anstoßende Aufhängung oder ein falsches Maß; vor jedem Befund neu wiegen.",
  ],
  [
    "The piece displaced {n} cm³, less than half of its outline's {n1} cm³: was it wholly under water, and is the outline that of the metal?",
    "Das Stück verdrängte {n} cm³, weniger als die Hälfte der {n1} cm³ seines Umrisses: war es ganz unter Wasser, und ist der Umriss der des Metalls?",
  ],
];
