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
  const heard = heardAlike(lines);
  if ("refused" in heard) return heard;
  const values: SensorProfile["values"] = [];
  for (const value of read) {
    const placed = placeOf(value, heard);
    if (!("place" in placed)) return placed;
    values.push(placed.place);
  }
  const { comma, cut, texts } = heard;
  const { around, numbers } = cut[0]!;
  const fixed = numbers
    .map((text, at) => ({ at, text }))
    .filter(
      ({ at, text }) =>
        /^\d+$/.test(text) &&
        !values.some((value) => value.at === at) &&
        cut.every((line) => line.numbers[at] === text),
    );
  const profile: SensorProfile = { name, around, fixed, comma, values };
  const reader = readBySensorProfile(profile);
  const samples = texts.filter((line) => {
    const meaning = reader(line, new Uint8Array());
    return meaning !== null && "reading" in meaning;
  });
  const unread = texts.find((line) => !samples.includes(line));
  if (values.length === 0 || unread !== undefined)
    return { refused: message("sensor.learn.not-read", { sample: unread ?? texts[0]! }) };
  return { profile, samples: samples.slice(-3) };
}

/** Lines that are built alike, cut into their numbers and what stands around them. */
interface HeardAlike {
  texts: readonly string[];
  cut: readonly ReturnType<typeof partsOf>[];
  comma: SensorProfile["comma"];
}

function heardAlike(lines: readonly string[]): HeardAlike | { refused: Message } {
  const texts = lines.filter((line) => line.trim() !== "");
  if (texts.length < fewestLines)
    return { refused: message("sensor.learn.few-lines", { lines: texts.length }) };
  const cut = texts.map(partsOf);
  const [sample = ""] = texts;
  const unlike = cut.findIndex((one) => !same(one.around, cut[0]!.around));
  if (unlike >= 0)
    return { refused: message("sensor.learn.lines-differ", { sample, other: texts[unlike]! }) };
  if (cut[0]!.numbers.length === 0) return { refused: message("sensor.learn.no-number", { sample }) };
  const written = cut.flatMap(({ numbers }) => numbers);
  const commas = written.some((one) => one.includes(","));
  if (commas && written.some((one) => one.includes(".")))
    return { refused: message("sensor.learn.point-and-comma", { sample }) };
  return { texts, cut, comma: commas ? "decimal" : "none" };
}

type Placed = { place: SensorProfile["values"][number] } | Exclude<LearnedSensor, { profile: SensorProfile }>;

/** Which number of the lines is the typed value; asked where several are. */
function placeOf(value: ReadOff, { texts, cut, comma }: HeardAlike): Placed {
  const unit = sensedUnitOf(value.unit);
  const shown = value.text.trim().replace(",", ".");
  if (unit === undefined || !/^[+-]?\d+(\.\d+)?$/.test(shown) || !sensedValue(shown, unit))
    return { refused: message("sensor.learn.value", { value: value.text, unit: value.unit }) };
  const near = (at: number) => cut.some(({ numbers }) => isNear(numbers[at], shown, comma));
  const fitting = cut[0]!.numbers
    .map((_, at) => at)
    .filter((at) => (value.at === undefined ? near(at) : at === value.at) && fits(cut, at, unit, comma));
  const sample = texts.at(-1)!;
  const [at, ...more] = fitting;
  if (at === undefined)
    return { refused: message("sensor.learn.not-found", { value: shown, unit, sample, other: texts[0]! }) };
  if (more.length === 0) return { place: { at, unit } };
  const options = fitting.map((place) => ({ at: place, text: cut.at(-1)?.numbers[place] ?? "" }));
  return { asks: message("sensor.learn.which", { value: shown, unit, sample }), options, value };
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
