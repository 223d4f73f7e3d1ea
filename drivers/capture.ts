import { type Message, message } from "../calibration/message.ts";
import { Refusal } from "../calibration/refusal.ts";
import type { Captured } from "./captured.ts";
import type { Clock } from "./clock.ts";
import { endsTheReading, type LineRecord } from "./reading.ts";
import { judge, type ReadingRecord, type Settling } from "./steadiness.ts";

/** How long a capture waits for the balance to settle, ms. */
const capturePatienceMs = 60_000;

/** The same line twice within this time is one line that arrived twice: a bounced key, a stuttering cable. */
const bounceMs = 10;

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
  settling: Settling;
  /** each line was asked for by a hand on the balance's own key */
  onKey: boolean;
  /** each line has to be asked for, and this one asks */
  asked?: boolean;
  /** whether the display has changed since the previous capture */
  stirred(): boolean;
  ended(): void;
}

/**
 * One capture, from the request until a reading is taken or it is said why not. Rejects with Refusal when
 * the balance is lost, when patience runs out, or when it is called off.
 */
export function beginCapture(request: CaptureRequest, settings: CaptureSettings): PendingCapture {
  const { byHand = false, patienceMs = capturePatienceMs, signal } = request;
  const { clock, settling, onKey, asked = false, stirred, ended } = settings;
  const afterMs = request.afterMonotonicMs ?? clock.monotonicMs();
  const heard: ReadingRecord[] = [];
  const { promise: result, resolve, reject } = withResolvers<Captured>();
  let because = message(asked ? "balance.capture.no-answer" : "balance.capture.waiting");
  let over = false;

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
  function take(settledBy: Captured["settledBy"], lines: ReadingRecord[]): void {
    const newest = lines.at(-1)!;
    resolve({ reading: newest.reading, settledBy, at: newest.at, lines, stirred: stirred() });
    end();
  }
  function hearReading(record: ReadingRecord): void {
    const before = heard.at(-1);
    if (before && before.raw === record.raw && record.monotonicMs - before.monotonicMs < bounceMs) return;
    heard.push(record);
    // A key pressed on the balance is a hand that chose the moment, unless the line carries a mark.
    if (byHand || (onKey && record.reading.stability === "unknown")) {
      take("by-hand", [record]);
      return;
    }
    const judgement = judge(heard, settling);
    if (judgement.settled) take(judgement.by, judgement.lines);
    else because = judgement.because;
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
        heard.length = 0;
        because = record.event;
      }
      if (record.event.kind === "lost")
        giveUp(new Refusal("balance.capture.lost", { because: record.event }));
    },
  };
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
