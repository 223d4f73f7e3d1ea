import type { FreeRest } from "./parts-over.ts";
import { restCorner } from "./rest-corner.ts";

/** Gold as it is met in scrap; the corner is moved to what the density says from here. */
const start = 0.65;
const rounds = 3;
const [least, most] = [0.02, 0.98];

/**
 * Gold with a rest of silver and copper, silver's share of the rest between two ends, 0 to 1: what a house knows of its
 * own scrap. Zinc counts as more copper. The corners lie at the fineness that the specific volume (cm³/g at 20 °C) says.
 */
export function restOfMelt([low, high]: readonly [number, number], cm3PerG: number): FreeRest {
  return { likelihood: "common", corners: [low, high].map((silver) => cornerAt(silver, cm3PerG)) };
}

function cornerAt(silver: number, cm3PerG: number) {
  let gold = start;
  const corner = () => restCorner("Au", { Au: gold, Ag: (1 - gold) * silver, Cu: (1 - gold) * (1 - silver) });
  for (let round = 0; round < rounds; round++) {
    const { cm3PerG: volume, slope } = corner();
    gold = Math.min(most, Math.max(least, gold + (cm3PerG - volume) / slope));
  }
  return corner();
}
