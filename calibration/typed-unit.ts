import { decimalsShown, times } from "./decimal.ts";
import { gramsPerUnit } from "./units.ts";

/** A unit that may be typed: what it measures, and how decimal text in it becomes decimal text in the group's own unit. */
interface Unit {
  group: Group;
  /** exact factor to the group's own unit, as decimal text */
  factor: string;
}

type Group =
  | "mass"
  | "length"
  | "temperature"
  | "density"
  | "share"
  | "pressure"
  | "volume"
  | "conductivity"
  | "other";

const masses = Object.entries(gramsPerUnit).map(([unit, factor]): [string, Unit] => [
  unit,
  { group: "mass", factor },
]);

/**
 * Units by their usual spelling. in = 25.4 mm exactly (24 FR 5348, 1959); 100 % IACS = 58 MS/m (IEC 60028:1925);
 * 1 bar = 1000 hPa. Temperatures have no factor and are converted apart.
 */
const units: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ...masses,
  ["µm", { group: "length", factor: "0.001" }],
  ["mm", { group: "length", factor: "1" }],
  ["cm", { group: "length", factor: "10" }],
  ["m", { group: "length", factor: "1000" }],
  ["in", { group: "length", factor: "25.4" }],
  ["°C", { group: "temperature", factor: "1" }],
  ["°F", { group: "temperature", factor: "1" }],
  ["K", { group: "temperature", factor: "1" }],
  ["g/cm³", { group: "density", factor: "1" }],
  ["kg/m³", { group: "density", factor: "0.001" }],
  ["‰", { group: "share", factor: "1" }],
  ["%", { group: "share", factor: "10" }],
  ["hPa", { group: "pressure", factor: "1" }],
  ["Pa", { group: "pressure", factor: "0.01" }],
  ["kPa", { group: "pressure", factor: "10" }],
  ["bar", { group: "pressure", factor: "1000" }],
  ["cm³", { group: "volume", factor: "1" }],
  ["mm³", { group: "volume", factor: "0.001" }],
  ["l", { group: "volume", factor: "1000" }],
  ["% IACS", { group: "conductivity", factor: "0.58" }],
  ["MS/m", { group: "conductivity", factor: "1" }],
  ...["m/s", "µs", "mg/L", "1/°C", "s", "min"].map((unit): [string, Unit] => [
    unit,
    { group: "other", factor: "1" },
  ]),
]);

/** Other spellings of the same units, small letters without blanks. */
const spellings: ReadonlyMap<string, string> = new Map([
  ...[...units.keys()].map((unit): [string, string] => [bare(unit), unit]),
  ["c", "°C"],
  ["f", "°F"],
  ["inch", "in"],
  ["um", "µm"],
  ["μm", "µm"],
  ["μs", "µs"],
  ["us", "µs"],
  ["mbar", "hPa"],
  ["ml", "cm³"],
  ["iacs", "% IACS"],
  ["g/ml", "g/cm³"],
  ["kg/l", "g/cm³"],
  ["mg/l", "mg/L"],
]);

/** A spelling without what does not tell units apart: blanks, degree signs, raised digits, capitals. */
function bare(spelling: string): string {
  return spelling
    .replace(/[\s°º]/g, "")
    .replace(/\^/g, "")
    .replace(/³/g, "3")
    .toLowerCase();
}

/** The unit that a spelling means; "unclear" for "gr", which means gram to one and grain to another; undefined for others. */
export function unitTyped(spelling: string): string | "unclear" | undefined {
  // "MG" and "Mg" are no milligram
  if (/^M[gG]$/.test(spelling.trim())) return undefined;
  return bare(spelling) === "gr" ? "unclear" : spellings.get(bare(spelling));
}

/**
 * Decimal text from one unit to another, exact where the factor is; else to eight digits, temperatures to one decimal
 * more than typed. Undefined when the two do not measure the same thing.
 */
export function converted(text: string, from: string, to: string): string | undefined {
  if (from === to) return text;
  const [a, b] = [units.get(from), units.get(to)];
  if (!a || !b || a.group !== b.group || a.group === "other") return undefined;
  if (a.group === "temperature") return temperature(text, from, to);
  if (b.factor === "1") return times(text, a.factor);
  return String(Number(((Number(text) * Number(a.factor)) / Number(b.factor)).toPrecision(8)));
}

function temperature(text: string, from: string, to: string): string {
  const value = Number(text);
  const celsius = from === "°F" ? (value - 32) / 1.8 : from === "K" ? value - 273.15 : value;
  const there = to === "°F" ? celsius * 1.8 + 32 : to === "K" ? celsius + 273.15 : celsius;
  return there.toFixed(decimalsShown(text) + 1);
}
