import type { MassUnit } from "../calibration/units.ts";

/** Units of mass as balances write them. Exact spelling, since case tells a milligram from a tonne. */
const massWords: Record<string, MassUnit> = {
  g: "g",
  G: "g",
  kg: "kg",
  KG: "kg",
  mg: "mg",
  MG: "mg",
  ct: "ct",
  CT: "ct",
  ozt: "ozt",
  OZT: "ozt",
  "oz t": "ozt",
  dwt: "dwt",
  DWT: "dwt",
  gn: "gn",
  GN: "gn",
  oz: "oz",
  OZ: "oz",
};

/** Written after a number, these say that it is no weight, or one in a unit with more than one meaning. */
const otherWords: Record<string, string> = {
  pcs: "a count of pieces",
  PCS: "a count of pieces",
  "%": "a percentage",
  "g/cm3": "a density worked out by the balance itself",
  "g/cm\u00B3": "a density worked out by the balance itself",
  "kg/m3": "a density worked out by the balance itself",
  "kg/m\u00B3": "a density worked out by the balance itself",
  "g/ml": "a density worked out by the balance itself",
  "g/mL": "a density worked out by the balance itself",
  N: "a force",
  mN: "a force",
  "\u00B0C": "a temperature",
  "lb:oz": "a weight in two units",
  lb: "a weight in pounds",
  tl: "a weight in taels, which differ from place to place",
  tola: "a weight in tolas",
  mom: "a weight in momme",
  gr: "a weight in gr, which is read as gram by some and as grain by others",
};

export type UnitMeaning = { unit: MassUnit } | { notWeight: string } | null;

/** What the word behind a number says: a unit of mass, something that is no weight to be used, or not known. */
export function unitMeaning(word: string): UnitMeaning {
  if (Object.hasOwn(massWords, word)) return { unit: massWords[word]! };
  if (Object.hasOwn(otherWords, word)) return { notWeight: otherWords[word]! };
  return null;
}

const escaped = (word: string) => word.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");

/** Any known word behind a number, longest first, as part of a regular expression. */
export const unitPattern = [...Object.keys(massWords), ...Object.keys(otherWords)]
  .sort((a, b) => b.length - a.length)
  .map(escaped)
  .join("|");
