import type { Metal } from "./metal.ts";

/** What the platinum recipes share. */
const platinumAlloy = {
  family: "platinum",
  expansionPerMillionK: 9,
  magnetism: "none",
  conductivityIacsPercent: [4, 12],
  soundMPerS: null,
  elasticModulusGPa: 170,
  poissonRatio: 0.38,
  colour: "white",
  likelihood: "common",
  verified: false,
  notes: "alpha, IACS, E from memory",
} as const satisfies Partial<Metal>;

/** Platinum recipes; computed, not measured, unless marked verified. */
export const platinum = [
  {
    ...platinumAlloy,
    id: "pt-950ru",
    name: "Platinum 950 Pt-Ru",
    composition: { Pt: [0.95, null, null], Ru: [0.05, null, null] },
    densityGPerCm3: { nominal: 20.696, low: 20.5, high: 20.8 },
    source: "computed by the mixture law with excess terms; from memory trade tables print 20.7",
  },
  {
    ...platinumAlloy,
    id: "pt-950co",
    name: "Platinum 950 Pt-Co",
    composition: { Pt: [0.95, null, null], Co: [0.05, null, null] },
    densityGPerCm3: { nominal: 20.027, low: 19.9, high: 20.85 },
    magnetism: "weak",
    source:
      "computed by the mixture law with excess terms; mixture and Vegard (from memory lattice) give 20.0-20.1; trade tables print 20.8 (from memory): unresolved",
  },
  {
    ...platinumAlloy,
    id: "pt-950ir",
    name: "Platinum 950 Pt-Ir",
    composition: { Pt: [0.95, null, null], Ir: [0.05, null, null] },
    densityGPerCm3: { nominal: 21.503, low: 21.4, high: 21.6 },
    source: "computed by the mixture law with excess terms",
  },
  {
    ...platinumAlloy,
    id: "pt-950cu",
    name: "Platinum 950 Pt-Cu",
    composition: { Pt: [0.95, null, null], Cu: [0.05, null, null] },
    densityGPerCm3: { nominal: 20.047, low: 19.8, high: 20.4 },
    source: "computed by the mixture law with excess terms",
  },
  {
    ...platinumAlloy,
    id: "pt-900ir",
    name: "Platinum 900 Pt-Ir",
    composition: { Pt: [0.9, null, null], Ir: [0.1, null, null] },
    densityGPerCm3: { nominal: 21.556, low: 21.4, high: 21.65 },
    source: "computed by the mixture law with excess terms; hardness 110 HV annealed (Conlon, verified)",
  },
  {
    ...platinumAlloy,
    id: "pt-850pd",
    name: "Platinum 850 Pt-Pd",
    composition: { Pt: [0.85, null, null], Pd: [0.15, null, null] },
    densityGPerCm3: { nominal: 19.192, low: 19, high: 19.35 },
    source: "computed by the mixture law with excess terms; inside the fine-gold band",
  },
  {
    ...platinumAlloy,
    id: "pt-850ir",
    name: "Platinum 850 Pt-Ir",
    composition: { Pt: [0.85, null, null], Ir: [0.15, null, null] },
    densityGPerCm3: { nominal: 21.609, low: 21.45, high: 21.7 },
    source: "computed by the mixture law with excess terms",
  },
  {
    ...platinumAlloy,
    id: "pt-950pd",
    name: "Platinum 950 Pt-Pd",
    composition: { Pt: [0.95, null, null], Pd: [0.05, null, null] },
    densityGPerCm3: { nominal: 20.64, low: 20.5, high: 20.75 },
    source: "computed by the mixture law with excess terms",
  },
] satisfies Metal[];
