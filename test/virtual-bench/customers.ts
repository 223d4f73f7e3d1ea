import { metals } from "../../server/metals/library.ts";
import type { Metal } from "../../server/metals/metal.ts";
import type { Chance } from "./chance.ts";
import { type Bench, roomCelsius } from "./world.ts";

/** Claims of the counter, each with what is passed off for it. Ids of the alloy library, which is data and no physics. */
const passedOff: readonly (readonly [claim: string, fakes: readonly string[]])[] = [
  ["ag-999", ["brass-c260", "el-cu", "el-pb", "mo"]],
  ["ag-925", ["ag-800", "cuni-25", "nisilver"]],
  ["au-999", ["wha-95", "wha-97", "el-pb", "au-22y"]],
  ["au-22r", ["wha-90", "brass-c260", "au-18y"]],
  ["au-18y", ["au-14y", "agw-65", "brass-c260"]],
  ["pt-950ru", ["w-pure", "au-18y", "ag-999"]],
];

function metalOf(id: string): Metal {
  const found = metals.find((one) => one.id === id);
  if (found === undefined)
    throw new Error(`The library has no metal ${id}; the virtual counter needs another one.`);
  return found;
}

/** A claim with what the piece truly is. */
export interface Customer {
  claim: string;
  genuine: boolean;
  /** true density at the temperature of the water */
  gPerCm3: number;
}

/**
 * One customer: a claim, and a genuine piece anywhere in the claim's band, or half the time a fake anywhere in the band
 * of its own metal. The piece stands at the room's temperature and has grown with it since 20 °C.
 */
export function customer(bench: Bench, chance: Chance, pieces: "genuine" | "genuine and fakes"): Customer {
  const pick = <T>(cause: string, of: readonly T[]) => of[Math.floor(chance.share(cause) * of.length)]!;
  const [claim, fakes] = pick("claim", passedOff);
  const genuine = pieces === "genuine" || chance.share("genuine") < 0.5;
  const metal = metalOf(genuine ? claim : pick("fake", fakes));
  const { low, high } = metal.densityGPerCm3;
  const grown = 1 + 3e-6 * (metal.expansionPerMillionK ?? 0) * (roomCelsius(bench, chance) - 20);
  return { claim, genuine, gPerCm3: chance.between("alloy", low, high) / grown };
}
