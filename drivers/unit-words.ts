import type { Code } from "../calibration/message.ts";
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

/** What a number is that is no weight to be used: a code of its words. */
export type Quantity = Extract<Code, `quantity.${string}`>;

/** Written after a number, these say that it is no weight, or one in a unit with more than one meaning. */
const otherWords: Record<string, Quantity> = {
  pcs: "quantity.count",
  PCS: "quantity.count",
  "%": "quantity.percent",
  "g/cm3": "quantity.density",
  "g/cm\u00B3": "quantity.density",
  "kg/m3": "quantity.density",
  "kg/m\u00B3": "quantity.density",
  "g/ml": "quantity.density",
  "g/mL": "quantity.density",
  N: "quantity.force",
  mN: "quantity.force",
  "\u00B0C": "quantity.temperature",
  "lb:oz": "quantity.two-units",
  lb: "quantity.pounds",
  tl: "quantity.taels",
  tola: "quantity.tolas",
  mom: "quantity.momme",
  gr: "quantity.gr",
};

export type UnitMeaning = { unit: MassUnit } | { notWeight: Quantity } | null;

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
