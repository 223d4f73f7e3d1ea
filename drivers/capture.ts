import { type Message, message } from "../calibration/message.ts";
import { Refusal } from "../calibration/refusal.ts";
import type { KnownDisplay } from "../calibration/stable-reading/known-display.ts";
import { LoadReading } from "../calibration/stable-reading/load-reading.ts";
import { StableReading, type TakenValue } from "../calibration/stable-reading/stable-reading.ts";
import { atRestOf, type Captured, linesAtRest, withLine } from "./captured.ts";
import type { Clock } from "./clock.ts";
import { createKeyPresses } from "./key-presses.ts";
import { endsTheReading, type LineRecord } from "./reading.ts";
import { notYet, type ReadingRecord, type StableLines } from "./steadiness.ts";

/** How long a capture waits for the balance to settle, ms. */
const capturePatienceMs = 60_000;

export interface CaptureRequest {
  /** only lines that arrived after this time of the monotonic clock count; by default, after now */
  afterMonotonicMs?: number;
  /** take the next line that comes, settled or not; the record says so */
  byHand?: boolean;
  /** gives up after so many ms */
  patienceMs?: number;
  signal?: AbortSignal;
}

export interface PendingCapture {
  /** why nothing was taken yet */
  because(): Message;
  hear(record: LineRecord): void;
  result: Promise<Captured>;
}

export interface CaptureSettings {
  clock: Clock;
  lineOf: StableLines;
  /** what is known of the noise of this display */
  known: () => KnownDisplay;
  /** the load was seen at rest before the request */
  rested: boolean;
  /** the most that a creep of the load may still bring, g, where the load was seen long before; undefined elsewhere */
  possible(): number | undefined;
  /** what a display that creeps would be taken as, where a hand takes it */
  offer(): TakenValue | undefined;
  /** each line was asked for by a hand on the balance's own key */
  onKey: boolean;
  /** each line has to be asked for, and this one asks */
  asked?: boolean;
  /** whether the display has changed since the previous capture */
  stirred(): boolean;
  /** the load goes on being watched */
  taken(load: LoadReading): void;
  ended(): void;
}

/**
 * One capture, from the request until a reading is taken or it is said why not. Rejects with Refusal when
 * the balance is lost, when patience runs out, or when it is called off.
 */
export function beginCapture(request: CaptureRequest, settings: CaptureSettings): PendingCapture {
  const { byHand = false, patienceMs = capturePatienceMs, signal } = request;
  const { clock, lineOf, known, onKey, asked = false, stirred, ended } = settings;
  const afterMs = request.afterMonotonicMs ?? clock.monotonicMs();
  let heard: ReadingRecord[] = [];
  let load = new LoadReading(known, new StableReading(known(), settings.rested));
  const { promise: result, resolve, reject } = withResolvers<Captured>();
  let because = message(asked ? "balance.capture.no-answer" : "balance.capture.waiting");
  let over = false;
  const press = createKeyPresses();

  const callOff = clock.after(patienceMs, () => {
    const seconds = patienceMs / 1000;
    const unanswered = asked && heard.length === 0;
    giveUp(
      unanswered
        ? new Refusal("balance.capture.timed-out.asked", { seconds, because })
        : new Refusal("balance.capture.timed-out", { seconds, because }),
    );
  });
  const aborted = () => giveUp(new Refusal("balance.capture.called-off"));
  signal?.addEventListener("abort", aborted, { once: true });

  function end(): void {
    over = true;
    callOff();
    signal?.removeEventListener("abort", aborted);
    ended();
  }
  function giveUp(refusal: Refusal): void {
    if (over) return;
    end();
    reject(refusal);
  }
  function take(
    settledBy: Captured["settledBy"],
    lines: ReadingRecord[],
    { shown = lines.at(-1)!, value }: { shown?: ReadingRecord; value?: TakenValue | undefined } = {},
  ): void {
    const { at } = lines.at(-1)!;
    const atRest = value && { atRest: atRestOf(value) };
    resolve({ reading: shown.reading, settledBy, at, lines, stirred: stirred(), ...atRest });
    end();
  }
  function hearReading(record: ReadingRecord): void {
    // net and gross are not one load
    if (heard.at(-1)?.reading.label !== record.reading.label) load = new LoadReading(known);
    heard = withLine(heard, record);
    if (byHand) {
      take("by-hand", [record], { value: settings.offer() });
      return;
    }
    if (onKey) {
      const pressed = press(record);
      if (pressed.because) because = pressed.because;
      else take(record.reading.stability === "stable" ? "mark" : "own-criterion", pressed.taken);
      return;
    }
    const { judgement } = load.hear(lineOf(record));
    because = notYet(judgement, record) ?? because;
    if (judgement.state !== "taken") return;
    settings.taken(load);
    const value = withPossible(judgement.taken, settings.possible());
    const { lines, shown } = linesAtRest(heard, { since: load.since, value: value.value });
    take(shown.reading.stability === "stable" ? "mark" : "own-criterion", lines, { shown, value });
  }

  if (signal?.aborted) queueMicrotask(aborted);
  return {
    because: () => because,
    result,
    hear(record) {
      if (over || record.monotonicMs <= afterMs) return;
      if (record.reading) {
        hearReading(record);
        return;
      }
      if (endsTheReading(record)) {
        heard = [];
        load = new LoadReading(known);
        because = record.event;
      }
      if (record.event.kind === "lost")
        giveUp(new Refusal("balance.capture.lost", { because: record.event }));
    },
  };
}

/** The value with what is known of its creep by whoever saw the load for longer. */
function withPossible(taken: TakenValue, possible = taken.possible): TakenValue {
  const others = taken.flags.filter((flag) => flag !== "creep-possible");
  const isOpen = possible > 0 && !others.includes("creep");
  return { ...taken, possible, flags: isOpen ? [...others, "creep-possible"] : others };
}

function withResolvers<T>() {
  let resolve!: (value: T) => void;
  let reject!: (reason: Error) => void;
  const promise = new Promise<T>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  return { promise, resolve, reject };
}
