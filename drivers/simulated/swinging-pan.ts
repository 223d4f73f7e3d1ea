import type { SeededRandom } from "./seeded-random.ts";

export interface SwingingPanSettings {
  /** time constant of the swing after a change of load, s */
  settlingSeconds: number;
  /** standard deviation of one reading, g */
  noiseGrams: number;
  /** drift of the zero, g per hour */
  driftGramsPerHour: number;
}

/** The moving part: swings to a new load, trembles, and drifts. */
export interface SwingingPan {
  /** the load becomes so many grams now */
  load(grams: number, atMs: number): void;
  /** what it shows now, g, not yet rounded */
  shows(atMs: number): number;
}

/** Swings per second of a lightly damped pan. */
const swingsPerSecond = 1.1;

export function createSwingingPan(random: SeededRandom, settings: SwingingPanSettings): SwingingPan {
  let firstMs: number | undefined;
  let from = 0;
  let to = 0;
  let changedMs = Number.NEGATIVE_INFINITY;
  const swing = (atMs: number) => Math.exp(-(atMs - changedMs) / 1000 / settings.settlingSeconds);
  const still = (atMs: number) => {
    const seconds = (atMs - changedMs) / 1000;
    return to + (from - to) * swing(atMs) * Math.cos(2 * Math.PI * swingsPerSecond * Math.min(seconds, 60));
  };
  return {
    load(grams, atMs) {
      from = still(atMs);
      to = grams;
      changedMs = atMs;
    },
    shows(atMs) {
      firstMs ??= atMs;
      const drift = (settings.driftGramsPerHour * (atMs - firstMs)) / 3_600_000;
      return still(atMs) + drift + settings.noiseGrams * random.normal();
    },
  };
}
