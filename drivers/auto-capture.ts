import { lastPlace } from "../calibration/decimal.ts";
import { type Message, message } from "../calibration/message.ts";
import { toGrams } from "../calibration/units.ts";
import { endsTheReading, type LineRecord } from "./reading.ts";
import { judge, type ReadingRecord, type Settling, usualSettling } from "./steadiness.ts";

/** For hands in water: takes each settled load once, by itself. */
export interface AutoCapture {
  /** to be told every record; says where things stand after it */
  hear(record: LineRecord): AutoStep;
}

export interface AutoStep {
  state: "needs-empty" | "waiting-for-load" | "settling" | "waiting-for-lift";
  /** shown or spoken */
  message: Message;
  /** given once, at the moment of taking: sound the tone */
  taken?: { settledBy: "mark" | "own-criterion"; lines: ReadingRecord[] };
}

export interface AutoCaptureOptions {
  /** how long a load must keep still, ms; a hand that lowers a piece pauses, too */
  holdMs?: number;
  settling?: Settling;
}

/** The display may move by so many times what it moved over while it lay still, before that is a load. */
const restlessnessToALoad = 3;

/** A hanger that comes out of the water carries drops: within this share of the load before, it is empty. */
const shareLeftOnHanger = 0.1;

/**
 * A state machine without a clock of its own: settled and empty (empty pan, hanger in water, or beaker) → load →
 * settled for a while → taken, once → lifted → again. What it takes came after the load changed.
 */
export function createAutoCapture(options: AutoCaptureOptions = {}): AutoCapture {
  const { holdMs = 1500, settling = usualSettling } = options;
  let state: AutoStep["state"] = "needs-empty";
  let emptyGrams = 0;
  /** a change of load smaller than this is none, g; known from the first line on, and better once it kept still */
  let thresholdGrams = 0;
  let lines: ReadingRecord[] = [];

  const step = (told: Message, taken?: AutoStep["taken"]): AutoStep => ({
    state,
    message: told,
    ...(taken && { taken }),
  });
  const isEmpty = (record: ReadingRecord) =>
    Math.abs(Number(record.reading.grams) - emptyGrams) <= thresholdGrams;

  /**
   * Two plateaus of one load may lie apart by the spread that each of them may have; one last place more is a load, if
   * the empty display did not wander further than that.
   */
  function leastLoad(plateau: readonly ReadingRecord[]): number {
    const { text, unit } = plateau.at(-1)!.reading;
    const placeGrams = lastPlace(text) * Number(toGrams("1", unit));
    const grams = plateau.map(({ reading }) => Number(reading.grams));
    return Math.max(
      (2 * settling.spread + 1) * placeGrams,
      restlessnessToALoad * (Math.max(...grams) - Math.min(...grams)),
    );
  }

  /** Keeps the lines of the present plateau: a step of the load starts a new one. */
  function keep(record: ReadingRecord): void {
    if (thresholdGrams === 0) thresholdGrams = leastLoad([record]);
    const before = lines.at(-1);
    const stepped =
      before && Math.abs(Number(before.reading.grams) - Number(record.reading.grams)) > thresholdGrams;
    lines = stepped ? [record] : [...lines.slice(-199), record];
  }

  function plateau() {
    const first = lines[0];
    const judgement = judge(lines, settling);
    if (!first || !judgement.settled) return null;
    return judgement.lines.at(-1)!.monotonicMs - first.monotonicMs >= holdMs ? judgement : null;
  }

  /** Said with its limit, so that a piece too light to be noticed is no riddle. */
  const ready = () => step(message("balance.hands-free.ready", { smallest_g: thresholdGrams }));

  function needsEmpty(): AutoStep {
    const still = plateau();
    if (!still) return step(message("balance.hands-free.leave-empty"));
    emptyGrams = Number(still.lines.at(-1)!.reading.grams);
    thresholdGrams = leastLoad(still.lines);
    state = "waiting-for-load";
    lines = [];
    return ready();
  }

  function settlingDown(record: ReadingRecord): AutoStep {
    if (isEmpty(record)) {
      state = "waiting-for-load";
      lines = [];
      return step(message("balance.hands-free.lifted"));
    }
    const still = plateau();
    if (!still) return step(message("balance.hands-free.keep-still"));
    state = "waiting-for-lift";
    lines = [];
    const { text, unit, grams } = still.lines.at(-1)!.reading;
    thresholdGrams = Math.max(thresholdGrams, shareLeftOnHanger * Math.abs(Number(grams) - emptyGrams));
    return step(message("balance.hands-free.taken", { reading: { decimal: text }, unit }), {
      settledBy: still.by,
      lines: still.lines,
    });
  }

  return {
    hear(record) {
      if (!record.reading) {
        if (!endsTheReading(record)) return step(record.event);
        lines = [];
        if (state === "settling") state = "waiting-for-load";
        if (record.event.kind === "lost") state = "needs-empty";
        return step(record.event);
      }
      keep(record);
      switch (state) {
        case "needs-empty":
          return needsEmpty();
        case "waiting-for-load":
          if (isEmpty(record)) return ready();
          state = "settling";
          lines = [record];
          return step(message("balance.hands-free.keep-still"));
        case "settling":
          return settlingDown(record);
        case "waiting-for-lift":
          if (!isEmpty(record)) return step(message("balance.hands-free.lift"));
          state = "waiting-for-load";
          lines = [];
          return step(message("balance.hands-free.next"));
      }
    },
  };
}
