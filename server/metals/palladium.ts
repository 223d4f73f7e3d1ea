import type { Metal } from "./metal.ts";

/** What the palladium standards share. */
const palladiumAlloy = {
  family: "palladium",
  expansionPerMillionK: 12,
  magnetism: "none",
  conductivityIacsPercent: [4, 12],
  soundMPerS: null,
  elasticModulusGPa: 120,
  poissonRatio: 0.39,
  colour: "white",
  likelihood: "common",
  source: "computed by the mixture law with excess terms; composition from memory",
  verified: false,
} as const satisfies Partial<Metal>;

/** Palladium recipes; computed. */
export const palladium = [
  {
    ...palladiumAlloy,
    id: "pd-950",
    name: "Palladium 950 (Ru, Ga, Cu)",
    composition: { Pd: [0.95, null, null], Ru: [0.05, null, null] },
    densityGPerCm3: { nominal: 12.039, low: 11.6, high: 12.1 },
  },
  {
    ...palladiumAlloy,
    id: "pd-500",
    name: "Palladium 500 (Ag)",
    composition: { Pd: [0.5, null, null], Ag: [0.5, null, null] },
    densityGPerCm3: { nominal: 11.209, low: 10.9, high: 11.4 },
  },
] satisfies Metal[];
