import { type Message, message } from "../calibration/message.ts";
import { type KnownDisplay, unknownDisplay } from "../calibration/stable-reading/known-display.ts";
import { emptySteps, LoadReading } from "../calibration/stable-reading/load-reading.ts";
import { lineDeviation } from "../calibration/stable-reading/noise.ts";
import type { StableLine } from "../calibration/stable-reading/points.ts";
import { type Judgement, StableReading } from "../calibration/stable-reading/stable-reading.ts";
import { type AtRest, atRestOf, type Captured, linesAtRest, withLine } from "./captured.ts";
import { endsTheLoad, endsTheReading, type LineRecord } from "./reading.ts";
import { createStableLines, driftMessage, type ReadingRecord } from "./steadiness.ts";

/** For hands in water: takes each load that comes to rest once, by itself. */
export interface AutoCapture {
  /** to be told every record; says where things stand after it */
  hear(record: LineRecord): AutoStep;
}

export interface AutoStep {
  state: "waiting-for-load" | "settling" | "waiting-for-lift";
  /** shown */
  message: Message;
  /** given once, at the moment it happens: to be sounded and spoken */
  event?: "taken" | "refused" | "lifted" | "empty";
  /** given with the event of that name */
  taken?: Pick<Captured, "settledBy" | "reading" | "lines"> & { atRest: AtRest };
}

/** What is to be done with a load at rest: taken, refused until it is lifted, or left until something else was done. */
export type Verdict = "take" | { refused: Message } | { waits: Message };

export interface AutoCaptureOptions {
  /** what is known of the display */
  known?: () => KnownDisplay;
  /** the load was seen at rest before */
  rested?: boolean;
  /** the load lies there since it was taken: it is lifted first */
  isTaken?: boolean;
  /** what the display shows when nothing is to be weighed, g */
  emptyGrams?: () => number;
  /** asked about each load at rest, g above empty */
  judge?: (grams: number) => Verdict;
}

/** So many standard deviations of a line are no load. */
const deviationsToALoad = 6;

/** A display that fell to this share of the load shows that it was lifted. */
const shareLifted = 0.1;

/** Drops on a hanger that comes out of the water: at most so many g are no load. */
const dropsGrams = 0.3;

/** A load that lay there for so long and was lifted before it was taken is told, s. */
const earlySeconds = 2;

/** An empty balance is told once after so long, s. */
const emptySeconds = 10;

/**
 * A state machine without a clock of its own: load → at rest → taken, once → lifted → again. A load that lies there
 * already counts once it has been seen at rest. What it takes rests on lines heard since the load changed.
 */
export function createAutoCapture({
  known = () => unknownDisplay,
  rested = false,
  isTaken = false,
  emptyGrams = () => 0,
  judge = () => "take",
}: AutoCaptureOptions = {}): AutoCapture {
  const lineOf = createStableLines();
  let state: AutoStep["state"] = isTaken ? "waiting-for-lift" : "settling";
  let load = new LoadReading(known, new StableReading(known(), rested));
  let lines: ReadingRecord[] = [];
  /** the load on the balance, g above empty, once it is known */
  let lies: number | undefined;
  /** what the hanger may carry once it was lifted, g */
  let left = 0;
  let emptySince: number | undefined;
  let waitsFor: Message | undefined;
  let liftSays = message("balance.hands-free.lift");

  const step = (sentence: Message, more: Pick<AutoStep, "taken" | "event"> = {}): AutoStep => ({
    state,
    message: sentence,
    ...more,
  });
  /** A change of load smaller than this is none, g. */
  const leastLoad = ({ step: display }: StableLine) =>
    Math.max(left, Math.max(emptySteps, deviationsToALoad * lineDeviation(known().noises)) * display);

  function anew(next: AutoStep["state"]): void {
    state = next;
    load = new LoadReading(known);
    lines = [];
    lies = undefined;
    emptySince = undefined;
    waitsFor = undefined;
    liftSays = message("balance.hands-free.lift");
  }

  function empty(line: StableLine): AutoStep {
    const early =
      state === "settling" && line.seconds - (lines[0]?.monotonicMs ?? Number.POSITIVE_INFINITY) / 1000;
    if (state !== "waiting-for-load") anew("waiting-for-load");
    if (early && early >= earlySeconds)
      return step(message("balance.hands-free.lifted-early"), { event: "refused" });
    const ready = message("balance.hands-free.ready", { smallest_g: leastLoad(line) });
    emptySince ??= line.seconds;
    if (line.seconds - emptySince < emptySeconds) return step(ready);
    emptySince = Number.POSITIVE_INFINITY;
    return step(ready, { event: "empty" });
  }

  /** It stays refused until it is lifted. */
  function refused(sentence: Message, grams: number): AutoStep {
    state = "waiting-for-lift";
    liftSays = sentence;
    lies = grams;
    return step(sentence, { event: "refused" });
  }

  function settling(judgement: Judgement): AutoStep {
    if (judgement.state === "drifting") return step(driftMessage(judgement.perSecond));
    if (judgement.state === "waiting") return step(message("balance.hands-free.keep-still"));
    if (judgement.state === "after" && judgement.moved !== undefined) {
      anew("settling");
      return step(message("balance.hands-free.keep-still"));
    }
    const { taken } = judgement;
    const grams = taken.value - emptyGrams();
    if (grams < 0) return refused(message("balance.hands-free.below-zero", { grams }), grams);
    const verdict = judge(grams);
    if (verdict === "take") return take(taken, grams);
    if ("refused" in verdict) return refused(verdict.refused, grams);
    const isTold = waitsFor?.code === verdict.waits.code;
    waitsFor = verdict.waits;
    return step(verdict.waits, isTold ? {} : { event: "refused" });
  }

  function take(taken: Extract<Judgement, { state: "taken" }>["taken"], grams: number): AutoStep {
    state = "waiting-for-lift";
    lies = grams;
    const resting = linesAtRest(lines, { since: load.since, value: taken.value });
    const { reading } = resting.shown;
    const settledBy = reading.stability === "stable" ? "mark" : "own-criterion";
    return step(liftSays, {
      event: "taken",
      taken: { settledBy, reading, lines: resting.lines, atRest: atRestOf(taken) },
    });
  }

  function waitingForLift(line: StableLine, judgement: Judgement, isOther: boolean): AutoStep {
    lies ??= line.value - emptyGrams();
    if (Math.abs(line.value - emptyGrams()) <= Math.max(leastLoad(line), shareLifted * Math.abs(lies))) {
      left = Math.min(shareLifted * Math.abs(lies), dropsGrams);
      anew("waiting-for-load");
      return step(message("balance.hands-free.lifted"), { event: "lifted" });
    }
    if (isOther) return refused(message("balance.hands-free.not-lifted"), lies);
    const moved = judgement.state === "after" ? judgement.moved : undefined;
    if (moved === undefined || liftSays.code !== "balance.hands-free.lift") return step(liftSays);
    liftSays = message("balance.rest.changed", { grams: moved });
    return step(liftSays, { event: "refused" });
  }

  return {
    hear(record) {
      if (!record.reading) {
        if (endsTheLoad(record)) anew("waiting-for-lift");
        else if (endsTheReading(record) && state === "settling") anew("settling");
        return step(record.event);
      }
      const line = lineOf(record);
      if (state !== "waiting-for-lift") {
        if (Math.abs(line.value - emptyGrams()) <= leastLoad(line)) return empty(line);
        if (state === "waiting-for-load") anew("settling");
      }
      lines = withLine(lines, record);
      const { judgement, next } = load.hear(line);
      // another load without an empty balance in between
      if (next) load = next.load;
      if (next && waitsFor)
        return refused(message("balance.hands-free.not-lifted"), line.value - emptyGrams());
      return state === "settling"
        ? settling(next?.judgement ?? judgement)
        : waitingForLift(line, judgement, next !== undefined);
    },
  };
}
