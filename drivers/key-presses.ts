import { type Message, message } from "../calibration/message.ts";
import type { ReadingRecord } from "./steadiness.ts";

/** What one press of the balance's own key gives: the lines a reading is taken from, or why nothing is taken yet. */
export type Pressed = { taken: ReadingRecord[]; because?: never } | { because: Message; taken?: never };

/** Lines closer together than a person presses are one press, ms. */
const leastBetweenPressesMs = 500;

/**
 * Judges lines that each come from a press of the balance's own key. A line marked stable is taken at once; of lines without a
 * mark two that agree are needed, since a hand may have been on the pan.
 */
export function createKeyPresses(): (record: ReadingRecord) => Pressed {
  let before: ReadingRecord | undefined;
  return (record) => {
    const earlier = before;
    before = record;
    const { stability } = record.reading;
    if (stability === "moving") return { because: message("balance.rest.moving") };
    if (stability === "unknown" && !(earlier && sameShown(earlier, record)))
      return { because: message("balance.capture.press-again") };
    before = undefined;
    return { taken: stability === "stable" || !earlier ? [record] : [earlier, record] };
  };
}

/** Two presses of a key, far enough apart for a moving display to have moved, that show the same within two last digits. */
function sameShown(one: ReadingRecord, other: ReadingRecord): boolean {
  const decimals = ({ reading }: ReadingRecord) => (reading.text.split(".")[1] ?? "").length;
  const places = decimals(one);
  return (
    other.monotonicMs - one.monotonicMs >= leastBetweenPressesMs &&
    one.reading.unit === other.reading.unit &&
    places === decimals(other) &&
    Math.abs(Number(one.reading.text) - Number(other.reading.text)) <= 2.5 * 10 ** -places
  );
}
