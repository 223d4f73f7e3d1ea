import { z } from "zod";
import { purities } from "../../calibration/liquid.ts";

const decimal = (from: number, to: number, unit: string) =>
  z
    .string()
    .trim()
    .refine((text) => text !== "" && Number(text) >= from && Number(text) <= to, {
      message: `is not a number from ${from} to ${to} ${unit}`,
    });

/**
 * What the bench knows of itself between pieces: thermometer, water, air, balance and hanger. Decimal text in the
 * unit of the name; half-widths are rectangular, standard deviations are of a single reading.
 */
export const conditionsShape = z.strictObject({
  thermometerHalfWidthCelsius: decimal(0, 5, "°C"),
  purity: z.enum(purities),
  dissolvedSolidsMgPerL: decimal(0, 5000, "mg/L"),
  altitudeMetres: decimal(-400, 5000, "m"),
  /** empty: two thirds of the last decimal shown, the size common practice gives a balance without its own test */
  repeatabilityGrams: z.union([z.literal(""), decimal(0, 100, "g")]),
  immersedRepeatabilityGrams: z.union([z.literal(""), decimal(0, 100, "g")]),
  linearityGrams: decimal(0, 100, "g"),
  wireMillimetres: decimal(0, 5, "mm"),
  bubbleAllowanceMg: decimal(0, 1000, "mg"),
  /** confidence of intervals and findings */
  confidencePercent: decimal(50, 99.99, "%").default("95.45"),
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
