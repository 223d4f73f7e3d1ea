import { type Message, message } from "../calibration/message.ts";
import { type KnownDisplay, unknownDisplay } from "../calibration/stable-reading/known-display.ts";
import { emptySteps, LoadReading } from "../calibration/stable-reading/load-reading.ts";
import { lineDeviation } from "../calibration/stable-reading/noise.ts";
import type { StableLine } from "../calibration/stable-reading/points.ts";
import { type Judgement, StableReading } from "../calibration/stable-reading/stable-reading.ts";
import { type AtRest, atRestOf, type Captured, linesAtRest, withLine } from "./captured.ts";
import { endsTheReading, type LineRecord } from "./reading.ts";
import { createStableLines, driftMessage, type ReadingRecord } from "./steadiness.ts";

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
  taken?: Pick<Captured, "settledBy" | "reading" | "lines"> & { atRest: AtRest };
  /** given once when the display moves on by so many g while the load stays */
  moved?: number;
}

/** So many standard deviations of a line are no load. */
const deviationsToALoad = 6;

/** A hanger that comes out of the water carries drops: within this share of the load before, it is empty. */
const shareLeftOnHanger = 0.1;

/**
 * A state machine without a clock of its own: settled and empty (empty pan, hanger in water, or beaker) → load →
 * settled → taken, once → lifted → again. What it takes came after the load changed. `known` is what is known of the
 * display, and `rested` whether it was at rest before.
 */
export function createAutoCapture(
  known: () => KnownDisplay = () => unknownDisplay,
  rested = false,
): AutoCapture {
  const lineOf = createStableLines();
  let state: AutoStep["state"] = "needs-empty";
  let load = new LoadReading(known, new StableReading(known(), rested));
  let emptyGrams = 0;
  /** a change of load smaller than this is none, g */
  let thresholdGrams = 0;
  let lines: ReadingRecord[] = [];

  const step = (told: Message, more: Pick<AutoStep, "taken" | "moved"> = {}): AutoStep => ({
    state,
    message: told,
    ...more,
  });
  const isEmpty = ({ value }: StableLine) => Math.abs(value - emptyGrams) <= thresholdGrams;
  /** Said with its limit, so that a piece too light to be noticed is no riddle. */
  const ready = () => step(message("balance.hands-free.ready", { smallest_g: thresholdGrams }));

  function anew(next: AutoStep["state"]): void {
    state = next;
    load = new LoadReading(known);
    lines = [];
  }

  function needsEmpty(judgement: Judgement): AutoStep {
    if (judgement.state !== "taken") return step(message("balance.hands-free.leave-empty"));
    const { value, step: display } = judgement.taken;
    emptyGrams = value;
    thresholdGrams = Math.max(emptySteps, deviationsToALoad * lineDeviation(known().noises)) * display;
    anew("waiting-for-load");
    return ready();
  }

  function settling(line: StableLine, judgement: Judgement): AutoStep {
    if (isEmpty(line)) {
      anew("waiting-for-load");
      return step(message("balance.hands-free.lifted"));
    }
    if (judgement.state === "drifting") return step(driftMessage(judgement.perSecond));
    if (judgement.state !== "taken") return step(message("balance.hands-free.keep-still"));
    state = "waiting-for-lift";
    const { taken } = judgement;
    thresholdGrams = Math.max(thresholdGrams, shareLeftOnHanger * Math.abs(taken.value - emptyGrams));
    const resting = linesAtRest(lines, { since: load.since, value: taken.value });
    const { reading } = resting.shown;
    const told = message("balance.hands-free.taken", {
      reading: { decimal: reading.text },
      unit: reading.unit,
    });
    const settledBy = reading.stability === "stable" ? "mark" : "own-criterion";
    return step(told, { taken: { settledBy, reading, lines: resting.lines, atRest: atRestOf(taken) } });
  }

  function waitingForLift(line: StableLine, judgement: Judgement): AutoStep {
    if (isEmpty(line)) {
      anew("waiting-for-load");
      return step(message("balance.hands-free.next"));
    }
    const moved = judgement.state === "after" ? judgement.moved : undefined;
    if (moved === undefined) return step(message("balance.hands-free.lift"));
    return step(message("balance.rest.changed", { grams: moved }), { moved });
  }

  return {
    hear(record) {
      if (!record.reading) {
        if (!endsTheReading(record)) return step(record.event);
        if (record.event.kind === "lost") anew("needs-empty");
        else if (state === "settling") anew("waiting-for-load");
        return step(record.event);
      }
      const line = lineOf(record);
      if (state === "waiting-for-load") {
        if (isEmpty(line)) return ready();
        anew("settling");
      }
      lines = withLine(lines, record);
      const { judgement, next } = load.hear(line);
      // another load without an empty hanger in between: it is lifted first
      if (next) load = next.load;
      if (state === "needs-empty") return needsEmpty(judgement);
      return state === "settling" ? settling(line, judgement) : waitingForLift(line, judgement);
    },
  };
}
