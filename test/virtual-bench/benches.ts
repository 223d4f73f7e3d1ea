import type { Bench } from "./world.ts";

/**
 * Four benches from the assayer's to the kitchen's, with what their owners would state, and the pieces they are used
 * for: heavy enough that the displaced mass is some ten times its uncertainty, since lighter ones are refused.
 */
export const benches = {
  "0.1 mg": {
    lightestGrams: 1,
    heaviestGrams: 200,
    bench: {
      readabilityGrams: 0.0001,
      dryScatterGrams: 0.0001,
      wetScatterGrams: 0.0003,
      linearityGrams: 0.0001,
      thermometerCelsius: 0.06,
      airKgPerM3: 0.01,
      solidsMgPerL: 0,
      wireMillimetres: 0.1,
      bubblesMg: 0.2,
      waterKgPerM3: 0.005,
      evaporatedGrams: 0.0015,
    },
  },
  "1 mg": {
    lightestGrams: 3,
    heaviestGrams: 500,
    bench: {
      readabilityGrams: 0.001,
      dryScatterGrams: 0.0007,
      wetScatterGrams: 0.0012,
      linearityGrams: 0.001,
      thermometerCelsius: 0.2,
      airKgPerM3: 0.02,
      solidsMgPerL: 0,
      wireMillimetres: 0.2,
      bubblesMg: 0.5,
      waterKgPerM3: 0.005,
      evaporatedGrams: 0.006,
    },
  },
  "0.01 g": {
    lightestGrams: 10,
    heaviestGrams: 1000,
    bench: {
      readabilityGrams: 0.01,
      dryScatterGrams: 0.005,
      wetScatterGrams: 0.008,
      linearityGrams: 0.005,
      thermometerCelsius: 0.3,
      airKgPerM3: 0.03,
      solidsMgPerL: 200,
      wireMillimetres: 0.3,
      bubblesMg: 2,
      waterKgPerM3: 0.005,
      evaporatedGrams: 0.01,
    },
  },
  "0.1 g": {
    lightestGrams: 100,
    heaviestGrams: 1000,
    bench: {
      readabilityGrams: 0.1,
      dryScatterGrams: 0.04,
      wetScatterGrams: 0.06,
      linearityGrams: 0.05,
      thermometerCelsius: 0.6,
      airKgPerM3: 0.03,
      solidsMgPerL: 300,
      wireMillimetres: 0.5,
      bubblesMg: 5,
      waterKgPerM3: 0.005,
      evaporatedGrams: 0,
    },
  },
} satisfies Record<string, { lightestGrams: number; heaviestGrams: number; bench: Bench }>;

export type Scale = keyof typeof benches;
export const scales = Object.keys(benches) as Scale[];
