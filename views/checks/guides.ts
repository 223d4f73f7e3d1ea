/** The guided checks of a bench, in the order a new bench makes them. */
export const checkKinds = [
  "check-weight",
  "zero-return",
  "reference",
  "repeatability",
  "immersed-repeatability",
  "linearity",
  "eccentricity",
  "ice-point",
  "thermometer",
] as const;
export type CheckKind = (typeof checkKinds)[number];

/** One entry of a guided check. */
export interface GuideEntry {
  name: string;
  label: string;
  hint?: string;
  unit: "mass" | "celsius" | "number" | "none";
}

export interface Guide {
  title: string;
  why: string;
  steps: readonly string[];
  /** entries asked once */
  once: readonly GuideEntry[];
  /** readings asked in rows: each row has these entries, and a label of its own */
  rows: readonly string[];
  perRow: readonly GuideEntry[];
}

const numbered = (count: number, word: string) => Array.from({ length: count }, (_, i) => `${word} ${i + 1}`);

const weightKnown: readonly GuideEntry[] = [
  {
    name: "class",
    label: "Class of the weights",
    hint: "E2, F1, F2 or M1; empty if they are calibrated",
    unit: "none",
  },
  {
    name: "expanded",
    label: "or U of each stated value",
    hint: "expanded uncertainty, k = 2, from their calibration",
    unit: "mass",
  },
];

const repeatedReading: readonly GuideEntry[] = [{ name: "reading", label: "shows", unit: "mass" }];

/** Words and rows of each guided check. Numbers of repeats and places: common practice. */
export const guides: Record<CheckKind, Guide> = {
  "check-weight": {
    title: "Check weight",
    why: "Whether the balance shows today what it should. One weight near your usual load, each day before the first piece.",
    steps: [
      "Level, clean, warmed up; zero with the pan empty.",
      "Put the weight on the middle with tweezers or a cloth, let it settle, read.",
      "Every attempt is kept and drawn, also one that fails.",
    ],
    once: [...weightKnown, { name: "stated", label: "Stated value", unit: "mass" }],
    rows: ["Weighing"],
    perRow: repeatedReading,
  },
  "zero-return": {
    title: "Zero after a load",
    why: "Whether the empty pan comes back to its zero. What it does not come back by is inside every displaced mass.",
    steps: [
      "Read the empty pan, put your usual load on, take it off, read the empty pan again.",
      "Three times.",
    ],
    once: [],
    rows: numbered(3, "Load"),
    perRow: [
      { name: "before", label: "zero before", unit: "mass" },
      { name: "after", label: "zero after", unit: "mass" },
    ],
  },
  repeatability: {
    title: "Repeatability",
    why: "How far equal weighings scatter. It enters every budget and says which masses are too small for this balance.",
    steps: [
      "Take one weight near your usual load; what it weighs exactly does not matter.",
      "Let the balance come to rest at zero, put the weight on the middle, read, take it off.",
      "Ten times, each time from an empty pan.",
    ],
    once: [],
    rows: numbered(10, "Reading"),
    perRow: repeatedReading,
  },
  "immersed-repeatability": {
    title: "Repeatability, immersed",
    why: "How far equal weighings in water scatter: the wire, the meniscus and the water move too. It rules most densities.",
    steps: [
      "Hang one solid piece in water, wholly covered and free of bubbles, zeroed with the hanger at the same depth.",
      "Read, lift it out of the water, lower it again, let it rest, read.",
      "Ten times; at least six.",
    ],
    once: [],
    rows: numbered(10, "Immersion"),
    perRow: repeatedReading,
  },
  linearity: {
    title: "Linearity",
    why: "Whether the balance is as right at a small load as at a large one. The displaced mass is small, the dry mass large.",
    steps: [
      "Use check weights whose values are known, from a small one to your largest load.",
      "Weigh them upwards. Enter the stated value and what the balance shows.",
      "Leave rows empty that you have no weight for.",
    ],
    once: weightKnown,
    rows: numbered(6, "Load"),
    perRow: [
      { name: "stated", label: "stated value", unit: "mass" },
      { name: "reading", label: "shows", unit: "mass" },
    ],
  },
  eccentricity: {
    title: "Off-centre load",
    why: "Whether the place on the pan matters. It should not, but a beaker or a hanger never stands quite in the middle.",
    steps: [
      "Take one weight of about a third of the capacity.",
      "Weigh it in the middle, then half-way towards each edge, then in the middle again.",
    ],
    once: [],
    rows: ["Middle", "Front left", "Back left", "Back right", "Front right", "Middle again"],
    perRow: [{ name: "reading", label: "shows", unit: "mass" }],
  },
  "ice-point": {
    title: "Thermometer at the ice point",
    why: "At 20 °C half a degree is 0.01 % of the density. A probe that went wrong looks like any other.",
    steps: [
      "Fill a vacuum flask with crushed ice of distilled water and top up with distilled water.",
      "Hold the probe in the middle, off the wall, and wait five minutes: it should show 0.0 °C.",
      "Take it out, put it back, read again: three times.",
    ],
    once: [],
    rows: numbered(3, "Reading"),
    perRow: [{ name: "reading", label: "shows", unit: "celsius" }],
  },
  thermometer: {
    title: "Thermometer beside a second one",
    why: "A monthly look that needs no ice: two thermometers in the same stirred water must agree.",
    steps: [
      "Hold both in one beaker of room-warm water, side by side, stirred.",
      "Read both at once: three times, a minute apart.",
    ],
    once: [
      {
        name: "referenceU",
        label: "Standard uncertainty of the second thermometer",
        hint: "half its U from a calibration, or its stated ± divided by 1.73",
        unit: "celsius",
      },
    ],
    rows: numbered(3, "Reading"),
    perRow: [
      { name: "stated", label: "second shows", unit: "celsius" },
      { name: "reading", label: "own shows", unit: "celsius" },
    ],
  },
  reference: {
    title: "Reference piece",
    why: "The whole procedure at once: water, wire, thermometer and balance must give the known density again.",
    steps: [
      "Take the reference piece: solid, smooth, clean, with its stated density.",
      "Weigh it dry and immersed exactly as you weigh a customer's piece.",
      "Enter every attempt. A second try does not erase the first; both are drawn.",
    ],
    once: [
      { name: "piece", label: "Mark of the reference piece", unit: "none" },
      { name: "stated", label: "Its stated density, g/cm³", unit: "number" },
      {
        name: "expanded",
        label: "U of that value, g/cm³",
        hint: "expanded uncertainty, k = 2",
        unit: "number",
      },
      { name: "celsius", label: "Water temperature", unit: "celsius" },
    ],
    rows: numbered(3, "Immersion"),
    perRow: [
      { name: "dry", label: "dry", unit: "mass" },
      { name: "wet", label: "immersed, or rise", unit: "mass" },
    ],
  },
};

/** Name of an entry in the form that is sent: "reading-3", counted from 1; entries asked once keep their name. */
export function entryName(entry: GuideEntry, row?: number): string {
  return row === undefined ? entry.name : `${entry.name}-${row}`;
}
