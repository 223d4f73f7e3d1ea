import { type Captured, NotCaptured } from "./captured.ts";
import type { Clock } from "./clock.ts";
import { endsTheReading, type LineRecord } from "./reading.ts";
import { judge, type ReadingRecord, type Settling } from "./steadiness.ts";

/** How long a capture waits for the balance to settle, ms. */
export const capturePatienceMs = 60_000;

/** The same line twice within this time is one line that arrived twice: a bounced key, a stuttering cable. */
export const bounceMs = 10;

export interface CaptureRequest {
  /** only lines that arrived after this time of the monotonic clock count; by default, after now */
  afterMonotonicMs?: number;
  /** take the next line that comes, settled or not; the record says so */
  byHand?: boolean;
  /** who asks, for the other operator who asks meanwhile */
  by?: string;
  /** gives up after so many ms */
  patienceMs?: number;
  signal?: AbortSignal;
}

export interface PendingCapture {
  readonly by: string;
  /** why nothing was taken yet, as a sentence */
  because(): string;
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
 * One capture, from the request until a reading is taken or a sentence says why not. Rejects with NotCaptured when
 * the balance is lost, when patience runs out, or when it is called off.
 */
export function beginCapture(request: CaptureRequest, settings: CaptureSettings): PendingCapture {
  const { by = "the bench", byHand = false, patienceMs = capturePatienceMs, signal } = request;
  const { clock, settling, onKey, asked = false, stirred, ended } = settings;
  const afterMs = request.afterMonotonicMs ?? clock.monotonicMs();
  const heard: ReadingRecord[] = [];
  const { promise: result, resolve, reject } = withResolvers<Captured>();
  let because = asked
    ? "It was asked, and nothing came back. Check the request and its line end against the manual, and the cable."
    : "Waiting for the next line.";
  let over = false;

  const callOff = clock.after(patienceMs, () =>
    giveUp(
      asked && heard.length === 0
        ? `Nothing was captured within ${patienceMs / 1000} s. ${because}`
        : `Nothing was captured within ${patienceMs / 1000} s. ${because} Shield the balance from draught, or take it by hand.`,
    ),
  );
  const aborted = () => giveUp("The capture was called off. Nothing was taken.");
  signal?.addEventListener("abort", aborted, { once: true });

  function end(): void {
    over = true;
    callOff();
    signal?.removeEventListener("abort", aborted);
    ended();
  }
  function giveUp(says: string): void {
    if (over) return;
    end();
    reject(new NotCaptured(says));
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
    if (byHand || (onKey && record.reading.steady === "not-told")) {
      take("by-hand", [record]);
      return;
    }
    const judgement = judge(heard, settling);
    if (judgement.settled) take(judgement.by, judgement.lines);
    else because = judgement.because;
  }

  if (signal?.aborted) queueMicrotask(aborted);
  return {
    by,
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
        because = record.event.says;
      }
      if (record.event.kind === "lost") giveUp(`${record.event.says} Nothing was captured.`);
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
