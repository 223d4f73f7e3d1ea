/** The guided checks of a bench, in the order a new bench makes them. */
export const checkKinds = ["repeatability", "linearity", "eccentricity", "thermometer", "reference"] as const;
export type CheckKind = (typeof checkKinds)[number];

/** One entry of a guided check. */
export interface GuideEntry {
  name: string;
  label: string;
  hint?: string;
  unit: "mass" | "celsius" | "none";
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

/** Words and rows of each guided check. Numbers of repeats and places: common practice. */
export const guides: Record<CheckKind, Guide> = {
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
    perRow: [{ name: "reading", label: "shows", unit: "mass" }],
  },
  linearity: {
    title: "Linearity",
    why: "Whether the balance is as right at a small load as at a large one. The displaced mass is small, the dry mass large.",
    steps: [
      "Use check weights whose values are known, from a small one to your largest load.",
      "Weigh them upwards. Enter the stated value and what the balance shows.",
      "Leave rows empty that you have no weight for.",
    ],
    once: [],
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
  thermometer: {
    title: "Thermometer",
    why: "At 20 °C half a degree is 0.01 % of the density. A probe that went wrong looks like any other.",
    steps: [
      "Fill a vacuum flask with crushed ice of distilled water and top up with distilled water.",
      "Hold the probe in the middle, off the wall, and wait five minutes: it should show 0.0 °C.",
      "Or hold it beside a second thermometer in one beaker of room-warm water, stirred.",
    ],
    once: [],
    rows: ["Ice point", "Beside a second thermometer"],
    perRow: [
      { name: "stated", label: "should be", unit: "celsius" },
      { name: "reading", label: "shows", unit: "celsius" },
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
