import { message } from "../calibration/message.ts";
import { toGrams } from "../calibration/units.ts";
import { type Comma, decimalText } from "./number.ts";
import { type LineMeaning, lineEvent, type Stability } from "./reading.ts";
import { unitMeaning } from "./unit-words.ts";

/** The parts of a line that carry its meaning, found by a shape. */
export interface WeightParts {
  sign: string;
  digits: string;
  /** the word behind the number; "" when there is none */
  unit: string;
  stability: Stability;
  label?: "net" | "gross";
}

/**
 * From the parts of a line to its meaning: a reading, or an event that says why there is none. A unit that is
 * missing is not g; a count, a percentage or a density is not a weight; a comma that can be read in two ways is asked.
 */
export function weight({ sign, digits, unit, stability, label }: WeightParts, comma: Comma): LineMeaning {
  const line = `${sign}${digits}${unit === "" ? "" : ` ${unit}`}`;
  if (unit === "") return lineEvent("line.unit-missing", { line });
  const meaning = unitMeaning(unit);
  if (meaning === null) return null;
  if ("notWeight" in meaning)
    return lineEvent("line.not-a-weight.quantity", { line, quantity: message(meaning.notWeight) });
  const number = decimalText(sign, digits, comma);
  if ("unclear" in number) return lineEvent("line.unclear.comma", { line });
  return {
    reading: {
      text: number.text,
      unit: meaning.unit,
      grams: toGrams(number.text, meaning.unit),
      stability,
      ...(label && { label }),
    },
  };
}
