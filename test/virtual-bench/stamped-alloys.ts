import type { Chance } from "./chance.ts";

/**
 * Compositions that a stamp allows, drawn at random, and the density of each: written from handbooks and common practice,
 * with nothing of the program's metals, law or limits. Fractions are shares of the whole by mass.
 */
export interface Stamped {
  stamp: string;
  /** the precious metal and its least share */
  precious: "Au" | "Ag" | "Pt" | "Pd";
  fineness: number;
  /** systems in trade use; each component from nothing or a least to a most, the last one makes up the whole */
  systems: readonly {
    name: string;
    parts: Readonly<Record<string, readonly [number, number]>>;
    rest: string;
  }[];
}

/** Densities at 20 °C, g/cm³: CRC Handbook of Chemistry and Physics (from memory, but for copper as its lattice gives it). */
const gPerCm3: Readonly<Record<string, number>> = {
  Ag: 10.5,
  Au: 19.3,
  Co: 8.86,
  Cu: 8.94,
  Ga: 5.91,
  Ge: 5.323,
  In: 7.31,
  Ir: 22.56,
  Ni: 8.9,
  Pd: 12.02,
  Pt: 21.45,
  Ru: 12.37,
  W: 19.25,
  Zn: 7.14,
};

/** Departures from added volumes, cm³/g: gold-copper by Rose and by lattice constants, brass by handbooks (from memory). */
const excess: readonly (readonly [string, string, number])[] = [
  ["Au", "Cu", 0.004],
  ["Au", "Ag", -0.0005],
  ["Cu", "Zn", -0.015],
];

/** Density of a sound alloy, g/cm³ at 20 °C. */
export function alloyDensity(fractions: Readonly<Record<string, number>>): number {
  const ideal = Object.entries(fractions).reduce((volume, [of, w]) => volume + w / gPerCm3[of]!, 0);
  return (
    1 /
    excess.reduce((volume, [a, b, term]) => volume + term * (fractions[a] ?? 0) * (fractions[b] ?? 0), ideal)
  );
}

/** A composition drawn at random from those the stamp allows. */
export function drawAlloy({ precious, fineness, systems }: Stamped, chance: Chance): Record<string, number> {
  const { parts, rest } = systems[Math.floor(chance.share("system") * systems.length)]!;
  const over = Math.min(0.004, 1 - fineness) * chance.share("over the stamp");
  const drawn: Record<string, number> = { [precious]: fineness + over };
  let left = 1 - fineness - over;
  for (const [of, [least, most]] of Object.entries(parts)) {
    const to = Math.min(most, left);
    drawn[of] = Math.min(left, chance.between(`share of ${of}`, Math.min(least, to), to));
    left -= drawn[of];
  }
  drawn[rest] = (drawn[rest] ?? 0) + left;
  return drawn;
}

const gold = (stamp: number, fineness = stamp / 1000): Stamped => {
  const rest = 1 - fineness;
  return {
    stamp: `au-${stamp}`,
    precious: "Au",
    fineness,
    systems: [
      { name: "yellow", parts: { Zn: [0, 0.12 * rest], Ag: [0.1 * rest, 0.7 * rest] }, rest: "Cu" },
      { name: "red", parts: { Zn: [0, 0.05 * rest], Ag: [0, 0.1 * rest] }, rest: "Cu" },
      ...(fineness > 0.8
        ? []
        : [
            { name: "green", parts: { Cu: [0, 0.25 * rest] as const }, rest: "Ag" },
            {
              name: "white, palladium",
              parts: { Pd: [0.25 * rest, 0.45 * rest] as const, Cu: [0, 0.3 * rest] as const },
              rest: "Ag",
            },
            {
              name: "white, nickel",
              parts: { Ni: [0.15 * rest, 0.35 * rest] as const, Zn: [0.05 * rest, 0.2 * rest] as const },
              rest: "Cu",
            },
          ]),
    ],
  };
};

const silver = (stamp: number, zinc: number, more: Stamped["systems"] = []): Stamped => ({
  stamp: `ag-${stamp}`,
  precious: "Ag",
  fineness: stamp === 958 ? 0.9584 : stamp / 1000,
  systems: [
    { name: "copper", parts: {}, rest: "Cu" },
    { name: "copper and zinc", parts: { Zn: [0, zinc] }, rest: "Cu" },
    ...more,
  ],
});

const germanium = { name: "germanium", parts: { Ge: [0.004, 0.012] as const }, rest: "Cu" };
const palladium = { name: "palladium", parts: { Pd: [0.01, 0.075] as const }, rest: "Cu" };
const only = (stamp: string, precious: Stamped["precious"], fineness: number, rest: string): Stamped => ({
  stamp,
  precious,
  fineness,
  systems: [{ name: rest, parts: {}, rest }],
});
const platinum = (fineness: number, systems: Stamped["systems"]): Stamped => ({
  stamp: `pt-${Math.round(fineness * 1000)}`,
  precious: "Pt",
  fineness,
  systems,
});

/** Hallmarks and coin standards in trade use (ISO 9202 and national laws, from memory; compositions common practice). */
export const stampedAlloys: readonly Stamped[] = [
  gold(333),
  gold(375),
  gold(417),
  gold(500),
  gold(585),
  gold(625),
  gold(667, 2 / 3),
  gold(750),
  gold(833, 0.8333),
  gold(875),
  gold(900),
  gold(916, 0.9167),
  gold(958, 0.9583),
  gold(986),
  gold(990),
  only("au-995", "Au", 0.995, "Ag"),
  only("au-999", "Au", 0.999, "Cu"),
  only("au-24", "Au", 0.9999, "Ag"),
  {
    stamp: "ag-500",
    precious: "Ag",
    fineness: 0.5,
    systems: [
      { name: "copper", parts: {}, rest: "Cu" },
      { name: "coin, nickel and zinc", parts: { Ni: [0.03, 0.1], Zn: [0, 0.1] }, rest: "Cu" },
    ],
  },
  only("ag-720", "Ag", 0.72, "Cu"),
  silver(800, 0.08),
  silver(830, 0.08),
  silver(835, 0.08),
  silver(875, 0.06),
  silver(900, 0.04),
  silver(925, 0.05, [germanium, palladium]),
  silver(935, 0.04, [germanium]),
  silver(950, 0.03, [germanium]),
  silver(958, 0.02),
  silver(980, 0.005),
  only("ag-990", "Ag", 0.99, "Cu"),
  only("ag-999", "Ag", 0.999, "Cu"),
  only("ag-9999", "Ag", 0.9999, "Cu"),
  platinum(0.85, [
    { name: "palladium", parts: { Cu: [0, 0.05] }, rest: "Pd" },
    { name: "iridium", parts: {}, rest: "Ir" },
    { name: "copper", parts: { Pd: [0, 0.1] }, rest: "Cu" },
  ]),
  platinum(0.9, [
    { name: "palladium", parts: { Cu: [0, 0.04] }, rest: "Pd" },
    { name: "iridium", parts: {}, rest: "Ir" },
  ]),
  platinum(0.95, [
    ...["Ir", "Ru", "Co", "Cu", "Pd", "W"].map((rest) => ({ name: rest, parts: {}, rest })),
    { name: "gallium, indium, copper", parts: { Ga: [0.01, 0.04], In: [0, 0.02] }, rest: "Cu" },
  ]),
  only("pt-990", "Pt", 0.99, "Pd"),
  only("pt-999", "Pt", 0.999, "Pd"),
  {
    stamp: "pd-500",
    precious: "Pd",
    fineness: 0.5,
    systems: [
      { name: "silver", parts: { Cu: [0, 0.1] }, rest: "Ag" },
      { name: "copper", parts: { Ag: [0, 0.3] }, rest: "Cu" },
    ],
  },
  {
    stamp: "pd-850",
    precious: "Pd",
    fineness: 0.85,
    systems: [{ name: "silver and copper", parts: { Ag: [0, 0.15] }, rest: "Cu" }],
  },
  {
    stamp: "pd-950",
    precious: "Pd",
    fineness: 0.95,
    systems: [
      { name: "ruthenium", parts: {}, rest: "Ru" },
      { name: "gallium", parts: { Ga: [0.01, 0.05] }, rest: "Cu" },
      { name: "silver and copper", parts: { Ag: [0, 0.05] }, rest: "Cu" },
    ],
  },
  only("pd-999", "Pd", 0.999, "Pt"),
];
