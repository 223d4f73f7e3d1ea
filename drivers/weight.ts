import { toGrams } from "../calibration/units.ts";
import { type Comma, decimalText } from "./number.ts";
import type { LineMeaning, Steadiness } from "./reading.ts";
import { unitMeaning } from "./unit-words.ts";

/** The parts of a line that carry its meaning, found by a shape. */
export interface WeightParts {
  sign: string;
  digits: string;
  /** the word behind the number; "" when there is none */
  unit: string;
  steady: Steadiness;
  label?: "net" | "gross";
}

/**
 * From the parts of a line to its meaning: a reading, or an event that says why there is none. A unit that is
 * missing is not g; a count, a percentage or a density is not a weight; a comma that can be read in two ways is asked.
 */
export function weight({ sign, digits, unit, steady, label }: WeightParts, comma: Comma): LineMeaning {
  const shown = `${sign}${digits}${unit === "" ? "" : ` ${unit}`}`;
  if (unit === "")
    return {
      event: {
        kind: "unit-missing",
        says: `The balance sent "${shown}" without a unit. A number without a unit is no weight: set the balance to send its unit, or learn its lines.`,
      },
    };
  const meaning = unitMeaning(unit);
  if (meaning === null) return null;
  if ("notWeight" in meaning)
    return {
      event: {
        kind: "not-a-weight",
        says: `The balance sent "${shown}", ${meaning.notWeight}. Set it to weigh in g.`,
      },
    };
  const number = decimalText(sign, digits, comma);
  if ("unclear" in number)
    return {
      event: {
        kind: "unclear",
        says: `The balance sent "${shown}": the comma can be a decimal comma or a mark of thousands. Say once which it is for this balance.`,
      },
    };
  return {
    reading: {
      text: number.text,
      unit: meaning.unit,
      grams: toGrams(number.text, meaning.unit),
      steady,
      ...(label && { label }),
    },
  };
}
