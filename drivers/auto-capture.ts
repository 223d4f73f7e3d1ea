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
  says: string;
  /** given once, at the moment of taking: sound the tone */
  taken?: { settledBy: "mark" | "own-criterion"; lines: ReadingRecord[] };
}

export interface AutoCaptureOptions {
  /** a change of load smaller than this is none, g: well above noise, well below the lightest piece */
  thresholdGrams: number;
  /** how long a load must keep still, ms; a hand that lowers a piece pauses, too */
  holdMs?: number;
  settling?: Settling;
}

/**
 * A state machine without a clock of its own: settled and empty (empty pan, hanger in water, or beaker) → load →
 * settled for a while → taken, once → lifted → again. What it takes came after the load changed.
 */
export function createAutoCapture(options: AutoCaptureOptions): AutoCapture {
  const { thresholdGrams, holdMs = 1500, settling = usualSettling } = options;
  let state: AutoStep["state"] = "needs-empty";
  let emptyGrams = 0;
  let lines: ReadingRecord[] = [];

  const step = (says: string, taken?: AutoStep["taken"]): AutoStep => ({
    state,
    says,
    ...(taken && { taken }),
  });
  const isEmpty = (record: ReadingRecord) =>
    Math.abs(Number(record.reading.grams) - emptyGrams) <= thresholdGrams;

  /** Keeps the lines of the present plateau: a step of the load starts a new one. */
  function keep(record: ReadingRecord): void {
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

  function needsEmpty(): AutoStep {
    const still = plateau();
    if (!still) return step("Leave it empty until it is still.");
    emptyGrams = Number(still.lines.at(-1)!.reading.grams);
    state = "waiting-for-load";
    lines = [];
    return step("Ready. Hang the piece.");
  }

  function settlingDown(record: ReadingRecord): AutoStep {
    if (isEmpty(record)) {
      state = "waiting-for-load";
      lines = [];
      return step("Lifted before it was still. Nothing was taken. Hang the piece.");
    }
    const still = plateau();
    if (!still) return step("Keep still.");
    state = "waiting-for-lift";
    lines = [];
    const { text, unit } = still.lines.at(-1)!.reading;
    return step(`Taken: ${text} ${unit}. Lift the piece out.`, { settledBy: still.by, lines: still.lines });
  }

  return {
    hear(record) {
      if (!record.reading) {
        if (!endsTheReading(record)) return step(record.event.says);
        lines = [];
        if (state === "settling") state = "waiting-for-load";
        if (record.event.kind === "lost") state = "needs-empty";
        return step(record.event.says);
      }
      keep(record);
      switch (state) {
        case "needs-empty":
          return needsEmpty();
        case "waiting-for-load":
          if (isEmpty(record)) return step("Ready. Hang the piece.");
          state = "settling";
          lines = [record];
          return step("Keep still.");
        case "settling":
          return settlingDown(record);
        case "waiting-for-lift":
          if (!isEmpty(record)) return step("Lift the piece out.");
          state = "waiting-for-load";
          lines = [];
          return step("Ready for the next. Hang the piece.");
      }
    },
  };
}
