import { type Message, message } from "../../calibration/message.ts";
import { sensedUnitOf, sensedValue } from "./quantity.ts";
import { numberText, partsOf, readBySensorProfile, type SensorProfile } from "./sensor-profile.ts";

/** What the owner read off the sensor, or off another thermometer beside it, while the lines came. */
export interface ReadOff {
  /** decimal text, point or comma */
  text: string;
  unit: string;
  /** a sensor without a display: the number of the line, counted from 0, that its owner chose */
  at?: number | undefined;
}

export type LearnedSensor =
  | { profile: SensorProfile; samples: readonly string[] }
  | { asks: Message; options: readonly { at: number; text: string }[]; value: ReadOff }
  | { refused: Message };

/** A value moves on while its owner types: a number within so many of its last digits was what they read. */
const digitsMoved = 2;

/** Lines needed before a sensor is judged. */
const fewestLines = 3;

/**
 * Learns from lines heard while the owner typed what the sensor shows. Every line must be built alike; each typed value
 * must stand in the lines at one place only, else it is asked which number is meant. What shows nowhere is refused.
 */
export function learnSensor(name: string, lines: readonly string[], read: readonly ReadOff[]): LearnedSensor {
  const heard = lines.filter((line) => line.trim() !== "");
  if (heard.length < fewestLines)
    return { refused: message("sensor.learn.few-lines", { lines: heard.length }) };
  const cut = heard.map(partsOf);
  const [first] = cut;
  const usual = first && cut.filter((one) => same(one.around, first.around));
  if (!first || !usual || usual.length < heard.length)
    return {
      refused: message("sensor.learn.lines-differ", {
        sample: heard[0] ?? "",
        other: heard.find((_, i) => !same(cut[i]?.around ?? [], first?.around ?? [])) ?? "",
      }),
    };
  if (first.numbers.length === 0)
    return { refused: message("sensor.learn.no-number", { sample: heard[0] ?? "" }) };
  const commas = usual.some(({ numbers }) => numbers.some((one) => one.includes(",")));
  const points = usual.some(({ numbers }) => numbers.some((one) => one.includes(".")));
  if (commas && points)
    return { refused: message("sensor.learn.point-and-comma", { sample: heard[0] ?? "" }) };
  const comma = commas ? "decimal" : "none";
  const values: SensorProfile["values"] = [];
  for (const value of read) {
    const unit = sensedUnitOf(value.unit);
    const shown = value.text.trim().replace(",", ".");
    if (unit === undefined || !/^[+-]?\d+(\.\d+)?$/.test(shown) || !sensedValue(shown, unit))
      return { refused: message("sensor.learn.value", { value: value.text, unit: value.unit }) };
    const places = first.numbers
      .map((_, at) => at)
      .filter((at) =>
        value.at === undefined
          ? usual.some(({ numbers }) => isNear(numbers[at], shown, comma))
          : at === value.at,
      );
    const fitting = places.filter((at) => fits(usual, at, unit, comma));
    if (fitting.length === 0)
      return {
        refused: message("sensor.learn.not-found", {
          value: shown,
          unit,
          sample: heard.at(-1) ?? "",
          other: heard[0] ?? "",
        }),
      };
    if (fitting.length > 1) {
      const options = fitting.map((at) => ({ at, text: usual.at(-1)?.numbers[at] ?? "" }));
      return {
        asks: message("sensor.learn.which", { value: shown, unit, sample: heard.at(-1) ?? "" }),
        options,
        value,
      };
    }
    values.push({ at: fitting[0]!, unit });
  }
  const fixed = first.numbers
    .map((text, at) => ({ at, text }))
    .filter(
      ({ at, text }) =>
        /^\d+$/.test(text) &&
        !values.some((value) => value.at === at) &&
        usual.every(({ numbers }) => numbers[at] === text),
    );
  const profile: SensorProfile = { name, around: first.around, fixed, comma, values };
  const reader = readBySensorProfile(profile);
  const samples = heard.filter((line) => {
    const meaning = reader(line, new Uint8Array());
    return meaning !== null && "reading" in meaning;
  });
  if (values.length === 0 || samples.length < heard.length)
    return {
      refused: message("sensor.learn.not-read", {
        sample: heard.find((line) => !samples.includes(line)) ?? heard[0]!,
      }),
    };
  return { profile, samples: samples.slice(-3) };
}

function same(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((text, place) => text === other[place]);
}

function isNear(written: string | undefined, shown: string, comma: SensorProfile["comma"]): boolean {
  const text = written === undefined ? null : numberText(written, comma);
  if (text === null) return false;
  const decimals = (shown.split(".")[1] ?? "").length;
  return Math.abs(Number(text) - Number(shown)) <= digitsMoved * 10 ** -decimals + 1e-9;
}

/** True when the number at this place is a possible value of the unit in every line. */
function fits(
  lines: readonly { numbers: string[] }[],
  at: number,
  unit: string,
  comma: SensorProfile["comma"],
): boolean {
  return lines.every(({ numbers }) => {
    const text = numberText(numbers[at] ?? "", comma);
    return text !== null && sensedValue(text, unit) !== undefined;
  });
}
