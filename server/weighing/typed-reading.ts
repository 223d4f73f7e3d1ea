import { Refusal } from "../../calibration/refusal.ts";
import type { DecimalMark } from "../../calibration/typed-number.ts";
import { type Asked, readQuantity } from "../../calibration/typed-quantity.ts";
import { isMassUnit, type MassUnit, massUnits } from "../../calibration/units.ts";

/** A number read off a display, as decimal text in the unit asked for. Throws Refusal at the field `at`. */
export function typedDecimal(typed: string, asked: Asked, at: string): string {
  const read = readQuantity(typed, { displayed: true, ...asked });
  if (read.kind === "number") return read.text;
  throw new Refusal(read.message.code, read.message.params, at);
}

/**
 * A typed weight: decimal text as shown by the scale, and its unit, which may stand behind the number too. Throws
 * Refusal at the field `at`; for a load also below zero, for a zero not.
 */
export function typedReading(
  typed: string,
  unit: string,
  { mark = ".", of = "load", at }: { mark?: DecimalMark; of?: "load" | "zero"; at: string },
): { text: string; unit: MassUnit } {
  if (!isMassUnit(unit)) throw new Refusal("form.unit.not-listed", { unit, units: massUnits }, at);
  const text = typedDecimal(typed, { unit, unitChosen: true, mark }, at);
  if (of === "load" && text.startsWith("-"))
    throw new Refusal("form.reading.below-zero", { value: { decimal: text } }, at);
  return { text, unit };
}

/** A typed temperature of the water in °C within the range; what only makes sense in °F is asked about. Throws Refusal at `at`. */
export function typedCelsius(
  typed: string,
  range: { from: number; to: number },
  { mark = ".", at }: { mark?: DecimalMark; at: string },
): string {
  return typedDecimal(typed, { unit: "°C", mark, ...range }, at);
}
