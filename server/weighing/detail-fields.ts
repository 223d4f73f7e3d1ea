import { liquidRange } from "../../calibration/liquid.ts";
import { type MethodName, methods } from "../methods/index.ts";
import type { DetailGroupName } from "../methods/method.ts";

/** A number that may be stated about one weighing: its range and unit. The range is what a form takes, said in refusals. */
export interface NumberField {
  from: number;
  to: number;
  unit: string;
}

/** Numbers of the form, by the name of their field. */
export const numberFields = {
  pieces: { from: 2, to: 10_000, unit: "" },
  "odd-density": { from: 0.5, to: 25, unit: "g/cm³" },
  "added-mass": { from: 0, to: 100_000, unit: "g" },
  "added-mass-u": { from: 0, to: 1000, unit: "g" },
  "added-density": { from: 0.5, to: 25, unit: "g/cm³" },
  "added-density-u": { from: 0, to: 5, unit: "g/cm³" },
  wire: { from: 0, to: 5, unit: "mm" },
  "hanger-in-liquid": { from: 0, to: 10_000, unit: "g" },
  "hanger-in-air": { from: 0, to: 10_000, unit: "g" },
  "liquid-density": { ...liquidRange, unit: "g/cm³" },
  "liquid-density-u": { from: 0, to: 0.5, unit: "g/cm³" },
  "liquid-stated-at": { from: 0, to: 40, unit: "°C" },
  "liquid-expansion": { from: 0, to: 0.01, unit: "1/°C" },
  "body-volume": { from: 0.01, to: 10_000, unit: "cm³" },
  "body-volume-u": { from: 0, to: 100, unit: "cm³" },
  "body-dry": { from: 0, to: 100_000, unit: "g" },
  "body-immersed": { from: 0, to: 100_000, unit: "g" },
  "body-rise": { from: 0, to: 10_000, unit: "g" },
  gradient: { from: 0, to: 10, unit: "°C" },
  "air-temperature": { from: 0, to: 40, unit: "°C" },
  "air-pressure": { from: 500, to: 1100, unit: "hPa" },
  "air-humidity": { from: 0, to: 100, unit: "%" },
  "step-dry": { from: 0.000001, to: 100, unit: "g" },
  "step-wet": { from: 0.000001, to: 100, unit: "g" },
  "flask-liquid": { from: 0, to: 10_000, unit: "g" },
  "flask-warmer": { from: -10, to: 10, unit: "°C" },
  "flask-warmer-u": { from: 0, to: 10, unit: "°C" },
} satisfies Record<string, NumberField>;

export type NumberFieldName = keyof typeof numberFields;

/** Texts, choices and boxes of the form. */
export const wordFields = ["added-name", "liquid", "liquid-name", "liquid-lot", "drift"] as const;
export const boxes = ["wetting-agent", "paired"] as const;

export type DetailField = NumberFieldName | (typeof wordFields)[number] | (typeof boxes)[number];

/** The parts of the form in their order; each method says which it has. */
export const detailGroups = [
  { name: "pool", fields: ["pieces", "odd-density"] },
  {
    name: "added",
    fields: ["added-name", "added-mass", "added-mass-u", "added-density", "added-density-u"],
  },
  { name: "hanger", fields: ["wire", "wetting-agent", "hanger-in-liquid", "hanger-in-air"] },
  { name: "stand", fields: ["wire", "wetting-agent", "drift"] },
  { name: "flask", fields: ["flask-liquid", "flask-warmer", "flask-warmer-u"] },
  {
    name: "liquid",
    fields: [
      "liquid",
      "liquid-name",
      "liquid-lot",
      "liquid-density",
      "liquid-density-u",
      "liquid-stated-at",
      "liquid-expansion",
      "body-volume",
      "body-volume-u",
      "body-dry",
      "body-immersed",
      "body-rise",
    ],
  },
  { name: "room", fields: ["gradient", "air-temperature", "air-pressure", "air-humidity"] },
  { name: "display", fields: ["step-dry", "step-wet", "paired"] },
] as const satisfies readonly { name: DetailGroupName; fields: readonly DetailField[] }[];

export type DetailGroup = (typeof detailGroups)[number];

/** The groups that a method has. */
export function groupsOf(method: MethodName): readonly DetailGroup[] {
  return detailGroups.filter(({ name }) => methods[method].details.includes(name));
}
