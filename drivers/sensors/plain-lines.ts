import { type Comma, decimalText, digitsPattern, signPattern } from "../number.ts";
import { type BytesReader, lineEvent } from "../reading.ts";
import { type SensorReading, sensedUnitOf, sensedValue } from "./quantity.ts";

//   "21.43 °C"     "21.43 °C  1013.2 hPa  45 %"     "21,43 °C; 45 %"
const part = new RegExp(`^\\s*(${signPattern}?)(${digitsPattern})\\s*([^\\s\\d;,+\\-\\u2212]+)`);
const between = /^\s*[;,]?\s*/;

/**
 * Reads lines that say everything themselves: numbers, each with its unit, and nothing else. A line with a word or
 * number of unknown meaning is no reading; such a sensor is set up first.
 */
export function readPlainLines(comma: Comma = "not-known"): BytesReader<SensorReading> {
  return (line) => {
    const values = [];
    for (let rest = line.trim(); rest !== ""; ) {
      const [whole = "", sign = "", digits = "", word = ""] = part.exec(rest) ?? [];
      const unit = sensedUnitOf(word);
      if (unit === undefined) return null;
      const number = decimalText(sign, digits, comma);
      if ("unclear" in number) return lineEvent("line.unclear.comma", { line });
      const value = sensedValue(number.text, unit);
      if (!value) return lineEvent("line.damaged.sensor", { line, value: number.text, unit });
      values.push(value);
      rest = rest.slice(whole.length).replace(between, "");
    }
    return values.length === 0 ? null : { reading: { values } };
  };
}
