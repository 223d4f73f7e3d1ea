/** What a sensor beside the bench measures. */
export const sensedQuantities = ["temperature", "pressure", "humidity"] as const;
export type SensedQuantity = (typeof sensedQuantities)[number];

interface SensedUnit {
  quantity: SensedQuantity;
  /** from a number in this unit to °C, hPa or % */
  convert: (value: number) => number;
}

const hectopascalsPerMmHg = 1.333_223_874_15;

/**
 * Units as sensors write them, exact spelling. Values come out in °C, hPa and %. 1 mmHg = 133.322 387 415 Pa
 * (NIST SP 811, appendix B.8, from memory); 0 °C = 273.15 K and 32 °F (SI brochure).
 */
const units: Record<string, SensedUnit> = {
  "°C": { quantity: "temperature", convert: (value) => value },
  "°F": { quantity: "temperature", convert: (value) => ((value - 32) * 5) / 9 },
  K: { quantity: "temperature", convert: (value) => value - 273.15 },
  hPa: { quantity: "pressure", convert: (value) => value },
  mbar: { quantity: "pressure", convert: (value) => value },
  kPa: { quantity: "pressure", convert: (value) => value * 10 },
  bar: { quantity: "pressure", convert: (value) => value * 1000 },
  Pa: { quantity: "pressure", convert: (value) => value / 100 },
  mmHg: { quantity: "pressure", convert: (value) => value * hectopascalsPerMmHg },
  "%": { quantity: "humidity", convert: (value) => value },
};

/** Other spellings of the same units that can mean nothing else. */
const spellings: Record<string, string> = {
  "\u2103": "°C",
  degC: "°C",
  "\u2109": "°F",
  degF: "°F",
  "%RH": "%",
  "%rH": "%",
  "%r.H.": "%",
};

export const sensedUnits = Object.keys(units);

/** The unit a word means; undefined for a word that is none of them. */
export function sensedUnitOf(word: string): string | undefined {
  const spelled = Object.hasOwn(spellings, word) ? spellings[word] : word;
  return spelled !== undefined && Object.hasOwn(units, spelled) ? spelled : undefined;
}

/** What a sensor can truly show, in °C, hPa and %: outside of it the line is damaged or the unit another one. */
const sensedRanges: Readonly<Record<SensedQuantity, { from: number; to: number }>> = {
  temperature: { from: -40, to: 125 },
  pressure: { from: 300, to: 1100 },
  humidity: { from: 0, to: 100 },
};

/** One measured value as its line wrote it, and in °C, hPa or %. */
export interface SensedValue {
  quantity: SensedQuantity;
  /** decimal text as sent */
  text: string;
  unit: string;
  value: number;
}

/** What one line of a sensor says: one or several values. */
export interface SensorReading {
  values: readonly SensedValue[];
}

/** The value of a decimal text in a known unit; undefined outside the range of its quantity. */
export function sensedValue(text: string, unit: string): SensedValue | undefined {
  const known = units[unit];
  if (!known) return undefined;
  const value = known.convert(Number(text));
  const { from, to } = sensedRanges[known.quantity];
  if (!(value >= from && value <= to)) return undefined;
  return { quantity: known.quantity, text, unit, value };
}
