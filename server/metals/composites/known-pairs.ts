import { type Message, message } from "../../../calibration/message.ts";
import type { Colour, Likelihood, Magnetism, Metal } from "../metal.ts";
import { fromMemory } from "../provenance.ts";

/** A pair of components that somebody is known to make solid pieces of, and what such a piece shows. */
export interface KnownPair {
  /** the first is the one whose share is stated */
  pair: readonly [string, string];
  name: string;
  called: Message;
  likelihood: Likelihood;
  /** % IACS at a mass fraction of the first component */
  conductivityIacsPercent: (share: number) => readonly [number, number];
  soundMPerS: number | null;
  magnetism: Magnetism;
  colour: Colour;
  provenance: Metal["provenance"];
}

const fixed = (low: number, high: number) => () => [low, high] as const;

/** Minima printed for sintered tungsten-copper by tungsten share, % IACS; 25 % and below estimated. */
const tungstenCopper: readonly (readonly [number, number])[] = [
  [0, 97],
  [0.25, 65],
  [0.5, 54],
  [0.6, 47],
  [0.7, 42],
  [0.75, 38],
  [0.8, 34],
  [0.9, 27],
  [1, 27],
];

function tungstenCopperConductivity(share: number): readonly [number, number] {
  const after = Math.max(
    1,
    tungstenCopper.findIndex(([w]) => w >= share),
  );
  const [w0, c0] = tungstenCopper[after - 1]!;
  const [w1, c1] = tungstenCopper[after]!;
  const low = c0 + ((share - w0) / (w1 - w0)) * (c1 - c0);
  return [low, Math.min(100, low + (share < 0.4 ? 15 : 8))];
}

/** That somebody makes it, its colour and its pull are common practice. */
const memory = {
  conductivityLow: fromMemory,
  conductivityHigh: fromMemory,
  magnetism: fromMemory,
  colour: fromMemory,
} as const satisfies Metal["provenance"];
const memoryWithSound = { ...memory, sound: fromMemory } as const;
const soundSeen = { ...memory, sound: { kind: "seen", sources: ["astm-e494"] } } as const;
const leadSound = 2200;

/** Pairs outside this list are still computed, and called rare. */
export const knownPairs: readonly KnownPair[] = [
  {
    pair: ["Pb", "Sn"],
    name: "Lead and tin",
    called: message("composite.mix-pb-sn"),
    likelihood: "common",
    conductivityIacsPercent: fixed(8, 15),
    soundMPerS: leadSound,
    magnetism: "none",
    colour: "grey",
    provenance: memoryWithSound,
  },
  {
    pair: ["Pb", "Sb"],
    name: "Lead and antimony",
    called: message("composite.mix-pb-sb"),
    likelihood: "common",
    conductivityIacsPercent: fixed(4.3, 8.5),
    soundMPerS: 2160,
    magnetism: "none",
    colour: "grey",
    provenance: soundSeen,
  },
  {
    pair: ["Pb", "Cu"],
    name: "Lead and copper",
    called: message("composite.mix-pb-cu"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(8, 50),
    soundMPerS: null,
    magnetism: "none",
    colour: "grey",
    provenance: memory,
  },
  {
    pair: ["Pb", "Ag"],
    name: "Lead and silver",
    called: message("composite.mix-pb-ag"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(8, 60),
    soundMPerS: null,
    magnetism: "none",
    colour: "grey",
    provenance: memory,
  },
  {
    pair: ["Bi", "Sn"],
    name: "Bismuth and tin",
    called: message("composite.mix-bi-sn"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(1.3, 15),
    soundMPerS: null,
    magnetism: "none",
    colour: "grey",
    provenance: memory,
  },
  {
    pair: ["W", "Cu"],
    name: "Tungsten in copper",
    called: message("composite.mix-w-cu"),
    likelihood: "possible",
    conductivityIacsPercent: tungstenCopperConductivity,
    soundMPerS: 4800,
    magnetism: "none",
    colour: "reddish-grey",
    provenance: {
      ...memoryWithSound,
      conductivityLow: { kind: "seen", sources: ["encyclopedia-copper-tungsten"] },
    },
  },
  {
    pair: ["W", "Ag"],
    name: "Tungsten in silver",
    called: message("composite.mix-w-ag"),
    likelihood: "possible",
    conductivityIacsPercent: (share) => [35, Math.max(65, 105 - 80 * share)],
    soundMPerS: 4400,
    magnetism: "none",
    colour: "grey",
    provenance: memoryWithSound,
  },
  {
    pair: ["W", "Au"],
    name: "Tungsten in gold",
    called: message("composite.mix-au-w"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(25, 75),
    soundMPerS: null,
    magnetism: "none",
    colour: "yellow",
    provenance: memory,
  },
  {
    pair: ["W", "Ni"],
    name: "Tungsten with nickel binder",
    called: message("composite.mix-w-ni"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(10, 17),
    soundMPerS: 5200,
    magnetism: "weak",
    colour: "grey",
    provenance: memoryWithSound,
  },
  {
    pair: ["W", "Fe"],
    name: "Tungsten with iron binder",
    called: message("composite.mix-w-fe"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(10, 17),
    soundMPerS: 5200,
    magnetism: "weak",
    colour: "grey",
    provenance: memoryWithSound,
  },
  {
    pair: ["W", "Sn"],
    name: "Tungsten powder in tin",
    called: message("composite.mix-w-sn"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(10, 30),
    soundMPerS: null,
    magnetism: "none",
    colour: "grey",
    provenance: memory,
  },
  {
    pair: ["W", "Pb"],
    name: "Tungsten powder in lead",
    called: message("composite.mix-w-pb"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(8, 30),
    soundMPerS: null,
    magnetism: "none",
    colour: "grey",
    provenance: memory,
  },
  {
    pair: ["W", "polymer"],
    name: "Tungsten powder in polymer",
    called: message("composite.mix-w-polymer"),
    likelihood: "possible",
    conductivityIacsPercent: fixed(0, 1),
    soundMPerS: null,
    magnetism: "none",
    colour: "grey",
    provenance: memory,
  },
  {
    pair: ["Cu", "Zn"],
    name: "Copper and zinc (brass)",
    called: message("composite.mix-cu-zn"),
    likelihood: "common",
    conductivityIacsPercent: fixed(24, 60),
    soundMPerS: 4370,
    magnetism: "none",
    colour: "yellow",
    provenance: soundSeen,
  },
  {
    pair: ["Cu", "Sn"],
    name: "Copper and tin (bronze)",
    called: message("composite.mix-cu-sn"),
    likelihood: "common",
    conductivityIacsPercent: fixed(9, 40),
    soundMPerS: 3530,
    magnetism: "none",
    colour: "reddish-yellow",
    provenance: soundSeen,
  },
  {
    pair: ["Ag", "Cu"],
    name: "Silver and copper",
    called: message("composite.mix-ag-cu"),
    likelihood: "common",
    conductivityIacsPercent: fixed(65, 100),
    soundMPerS: null,
    magnetism: "none",
    colour: "white",
    provenance: memory,
  },
  {
    pair: ["Au", "Ag"],
    name: "Gold and silver",
    called: message("composite.mix-au-ag"),
    likelihood: "common",
    conductivityIacsPercent: fixed(8, 60),
    soundMPerS: null,
    magnetism: "none",
    colour: "greenish-yellow",
    provenance: memory,
  },
  {
    pair: ["Au", "Cu"],
    name: "Gold and copper",
    called: message("composite.mix-au-cu"),
    likelihood: "common",
    conductivityIacsPercent: fixed(8, 60),
    soundMPerS: null,
    magnetism: "none",
    colour: "red",
    provenance: memory,
  },
  {
    pair: ["Pt", "Cu"],
    name: "Platinum and copper",
    called: message("composite.mix-pt-cu"),
    likelihood: "rare",
    conductivityIacsPercent: fixed(3, 15),
    soundMPerS: null,
    magnetism: "none",
    colour: "white",
    provenance: memory,
  },
];
