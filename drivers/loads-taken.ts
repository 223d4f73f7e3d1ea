import { type Message, message } from "../calibration/message.ts";
import { Loads } from "../calibration/stable-reading/loads.ts";
import { linesAtRest, withLine } from "./captured.ts";
import { createKeyPresses } from "./key-presses.ts";
import { endsTheLoad, type LineRecord, type Reading } from "./reading.ts";
import { createStableLines, driftMessage, type ReadingRecord } from "./steadiness.ts";

/** A load that came to rest. */
export interface LoadTaken {
  reading: Reading;
  /** where its display rests, g, and how well that is known: this reading alone */
  grams: number;
  uGrams: number;
  /** of that, what may still come */
  driftUGrams: number;
  /** the most that a creep may bring which was not excluded yet, g; 0 where none is possible */
  possibleGrams: number;
  flags: readonly string[];
}

/** What one line brought about. */
export type LoadEvent =
  | { kind: "taken"; taken: LoadTaken }
  | { kind: "drifting"; message: Message }
  | { kind: "changed-after-take"; message: Message }
  /** the flag "creep-possible" of the load that was taken last is lifted */
  | { kind: "creep-excluded"; message: Message };

/** While it drifts, that is told so often, ms. */
const toldEveryMs = 5000;

/** Takes every load that comes to rest once, from every line and event of one balance. */
export function createLoadsTaken({
  onKey = false,
}: {
  onKey?: boolean;
} = {}): (record: LineRecord) => LoadEvent[] {
  const lineOf = createStableLines();
  const loads = new Loads();
  const press = createKeyPresses();
  let lines: ReadingRecord[] = [];
  let label: Reading["label"];
  let toldMs = Number.NEGATIVE_INFINITY;

  function heard(record: ReadingRecord): LoadEvent[] {
    const { reading } = record;
    if (reading.label !== label) loads.anew();
    label = reading.label;
    lines = withLine(lines, record);
    const line = lineOf(record);
    if (onKey) {
      const { because } = press(record);
      if (because) return [{ kind: "drifting", message: because }];
      const uGrams = line.step / Math.sqrt(12);
      return [
        {
          kind: "taken",
          taken: { reading, grams: line.value, uGrams, driftUGrams: 0, possibleGrams: 0, flags: ["on-key"] },
        },
      ];
    }
    const { judgement, since, taken, changed, excluded } = loads.hear(line);
    if (taken) {
      const { value: grams, u: uGrams, uDrift: driftUGrams, possible: possibleGrams, flags } = taken;
      const { shown } = linesAtRest(lines, { since, value: grams });
      return [
        {
          kind: "taken",
          taken: { reading: shown.reading, grams, uGrams, driftUGrams, possibleGrams, flags },
        },
      ];
    }
    if (changed !== undefined)
      return [{ kind: "changed-after-take", message: message("balance.rest.changed", { grams: changed }) }];
    if (excluded) return [{ kind: "creep-excluded", message: message("balance.rest.creep-excluded") }];
    if (judgement.state !== "drifting" || record.monotonicMs - toldMs < toldEveryMs) return [];
    toldMs = record.monotonicMs;
    return [{ kind: "drifting", message: driftMessage(judgement.perSecond) }];
  }

  return (record) => {
    if (record.reading) return heard(record);
    if (endsTheLoad(record)) loads.anew();
    return [];
  };
}
