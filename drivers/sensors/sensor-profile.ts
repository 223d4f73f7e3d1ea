import { z } from "zod";
import { decimalText } from "../number.ts";
import { type BytesReader, lineEvent } from "../reading.ts";
import { type SensedValue, type SensorReading, sensedUnits, sensedValue } from "./quantity.ts";

/** A number as part of a learned line: its sign stands directly before its digits. */
const number = /[+\-\u2212]?(?:\d+(?:[.,]\d+)?)/g;

/** A line cut into its numbers and what stands around them; blanks that fill up a column do not count. */
export function partsOf(line: string): { around: string[]; numbers: string[] } {
  const numbers = line.match(number) ?? [];
  return { around: line.split(number).map((text) => text.replace(/\s+/g, " ").trim()), numbers };
}

/** How the lines of one sensor are read: what stands around their numbers, and which number is which value. */
export const sensorProfileShape = z.strictObject({
  name: z.string().min(1).max(120),
  around: z.array(z.string().max(80)).min(1).max(40),
  /** whole numbers that never changed while it was learned, such as a channel or a status: another one is no reading */
  fixed: z.array(z.strictObject({ at: z.number().int().min(0).max(39), text: z.string().max(40) })).max(40),
  comma: z.enum(["decimal", "none"]),
  values: z
    .array(
      z.strictObject({
        at: z.number().int().min(0).max(39),
        unit: z.enum(sensedUnits as [string, ...string[]]),
      }),
    )
    .min(1)
    .max(8),
});

export type SensorProfile = z.infer<typeof sensorProfileShape>;

/** Reads only lines that are built exactly as the learned ones; anything else is no reading. */
export function readBySensorProfile(profile: SensorProfile): BytesReader<SensorReading> {
  return (line) => {
    const { around, numbers } = partsOf(line);
    if (around.length !== profile.around.length) return null;
    if (around.some((text, place) => text !== profile.around[place])) return null;
    if (profile.fixed.some(({ at, text }) => numbers[at] !== text)) return null;
    const values: SensedValue[] = [];
    for (const { at, unit } of profile.values) {
      const text = numberText(numbers[at] ?? "", profile.comma);
      if (text === null) return null;
      const value = sensedValue(text, unit);
      if (!value) return lineEvent("line.damaged.sensor", { line, value: text, unit });
      values.push(value);
    }
    return { reading: { values } };
  };
}

/** Decimal text of a number of a learned line; null where it is written in another way. */
export function numberText(written: string, comma: SensorProfile["comma"]): string | null {
  if (comma === "none" && written.includes(",")) return null;
  if (comma === "decimal" && written.includes(".")) return null;
  const sign = /^[+\-\u2212]/.exec(written)?.[0] ?? "";
  const read = decimalText(sign, written.slice(sign.length), "decimal");
  return "text" in read ? read.text : null;
}
