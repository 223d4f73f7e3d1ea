import { type Chance, normalBelow } from "./chance.ts";
import type { Bench, Room } from "./world.ts";

/** Density of the weights the balance was adjusted with, kg/m³. */
const adjustingWeight = 8000;

/** What happens to one reading beside gravity, g; see Trouble. */
export type Disturbed = (load: string, reading: number, grams: number) => number;

export interface VirtualBalance {
  shows(newtons: number, load: string, reading: number, scatterGrams: number): string;
}

/**
 * A balance turns a downward force into figures. It was adjusted this morning, in this air, so that a weight of density
 * 8000 kg/m³ shows its mass, apart from a span error; it departs from its straight line along one smooth curve, equally
 * likely anywhere within the stated half-width at each load; it scatters; and it shows whole last places of the
 * difference to a zero that itself stands anywhere within its last place.
 */
export function virtualBalance(
  bench: Bench,
  room: Room,
  chance: Chance,
  disturbed: Disturbed = () => 0,
): VirtualBalance {
  const span = 1 + chance.normal("span", 0, bench.spanRelative);
  const newtonsPerKg = room.gravity * (1 - room.trueAir / adjustingWeight);
  const d = bench.readabilityGrams;
  const decimals = Math.max(0, Math.round(-Math.log10(d)));
  const bend = [chance.normal("bend", 0, 1), chance.normal("lean", 0, 1)] as const;
  const departure = (grams: number) => {
    const along = (1.5 * Math.PI * grams) / bench.capacityGrams;
    const z = bend[0] * Math.cos(along) + bend[1] * Math.sin(along);
    return bench.linearityGrams * (2 * normalBelow(z) - 1);
  };
  return {
    shows(newtons, load, reading, scatterGrams) {
      const cause = `${load} ${reading}`;
      const loaded = (newtons / newtonsPerKg) * 1000;
      const grams =
        loaded * span +
        departure(loaded) +
        chance.normal(`${cause} scatter`, 0, scatterGrams) +
        chance.between(`${bench.zeroed === "once" ? load : cause} zero`, -d / 2, d / 2) +
        disturbed(load, reading, loaded);
      return (Math.round(grams / d) * d).toFixed(decimals);
    },
  };
}
