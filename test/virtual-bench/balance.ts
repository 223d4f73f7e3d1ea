import type { Chance } from "./chance.ts";
import type { Bench, World } from "./world.ts";

/** Density of the weights the balance was adjusted with, kg/m³. */
const adjustingWeight = 8000;

/**
 * A balance turns a downward force into figures. It was adjusted this morning, in this air, so that a weight of density
 * 8000 kg/m³ shows its mass, apart from a span error; it departs from its straight line at every load; it scatters; and
 * it shows whole last places of the difference to a zero that itself stands anywhere within its last place.
 */
export function virtualBalance(bench: Bench, room: World, chance: Chance) {
  const span = 1 + chance.between("span", -0.002, 0.002);
  const newtonsPerKg = room.gravity * (1 - room.trueAir / adjustingWeight);
  const d = bench.readabilityGrams;
  const decimals = Math.max(0, Math.round(-Math.log10(d)));
  return {
    /** the departure belongs to the load, scatter and zero to the reading */
    shows(newtons: number, load: string, reading: number, scatterGrams: number): string {
      const cause = `${load} ${reading}`;
      const grams =
        (newtons / newtonsPerKg) * 1000 * span +
        chance.between(`${load} linearity`, -bench.linearityGrams, bench.linearityGrams) +
        chance.normal(`${cause} scatter`, 0, scatterGrams) +
        chance.between(`${cause} zero`, -d / 2, d / 2);
      return (Math.round(grams / d) * d).toFixed(decimals);
    },
  };
}
