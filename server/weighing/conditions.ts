import { z } from "zod";
import { purities } from "../../calibration/liquid.ts";

/** What each number of the conditions may be, for their schema and for the form that asks them. */
export const conditionRanges = {
  thermometerHalfWidthCelsius: { from: 0, to: 5, unit: "°C" },
  dissolvedSolidsMgPerL: { from: 0, to: 5000, unit: "mg/L" },
  altitudeMetres: { from: -400, to: 5000, unit: "m" },
  repeatabilityGrams: { from: 0, to: 100, unit: "g" },
  immersedRepeatabilityGrams: { from: 0, to: 100, unit: "g" },
  linearityGrams: { from: 0, to: 100, unit: "g" },
  wireMillimetres: { from: 0, to: 5, unit: "mm" },
  bubbleAllowanceMg: { from: 0, to: 1000, unit: "mg" },
  confidencePercent: { from: 50, to: 99.99, unit: "%" },
} as const;

const decimal = (key: keyof typeof conditionRanges) => {
  const { from, to, unit } = conditionRanges[key];
  return z
    .string()
    .trim()
    .refine((text) => text !== "" && Number(text) >= from && Number(text) <= to, {
      message: `is not a number from ${from} to ${to} ${unit}`,
    });
};

/**
 * What the bench knows of itself between pieces: thermometer, water, air, balance and hanger. Decimal text in the
 * unit of the name; half-widths are rectangular, standard deviations are of a single reading.
 */
export const conditionsShape = z.strictObject({
  thermometerHalfWidthCelsius: decimal("thermometerHalfWidthCelsius"),
  purity: z.enum(purities),
  dissolvedSolidsMgPerL: decimal("dissolvedSolidsMgPerL"),
  altitudeMetres: decimal("altitudeMetres"),
  /** empty: two thirds of the last decimal shown, the size common practice gives a balance without its own test */
  repeatabilityGrams: z.union([z.literal(""), decimal("repeatabilityGrams")]),
  immersedRepeatabilityGrams: z.union([z.literal(""), decimal("immersedRepeatabilityGrams")]),
  linearityGrams: decimal("linearityGrams"),
  wireMillimetres: decimal("wireMillimetres"),
  bubbleAllowanceMg: decimal("bubbleAllowanceMg"),
  /** confidence of intervals and findings */
  confidencePercent: decimal("confidencePercent").default("95.45"),
});

export type Conditions = z.infer<typeof conditionsShape>;

/** A bench nobody has described yet. Thermometer ±0.5 °C and 1 mg for bubbles are common practice for a careful start. */
export const firstConditions: Conditions = {
  thermometerHalfWidthCelsius: "0.5",
  purity: "distilled",
  dissolvedSolidsMgPerL: "0",
  altitudeMetres: "0",
  repeatabilityGrams: "",
  immersedRepeatabilityGrams: "",
  linearityGrams: "0",
  wireMillimetres: "0",
  bubbleAllowanceMg: "0",
  confidencePercent: "95.45",
};
