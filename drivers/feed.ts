import type { Balance } from "./balance.ts";
import { type Captured, NotCaptured } from "./captured.ts";
import { type Clock, systemClock } from "./clock.ts";
import { defaultPatienceMs } from "./listening.ts";
import type { LineRecord } from "./reading.ts";
import { type Judgement, judge, type ReadingRecord, type Settling, usualSettling } from "./steadiness.ts";

/** How many of the last lines are kept for judging and for showing as received. */
export const keptLines = 200;

export interface FeedOptions {
  balance: Balance;
  clock?: Clock;
  /** a reading older than this is no reading any more, ms */
  patienceMs?: number;
  settling?: Settling;
}

/** The newest reading, or how long there has been none. No function gives an old number without its age. */
export type Latest =
  | { record: ReadingRecord; judgement: Judgement; silentForSeconds?: never }
  | { silentForSeconds: number; last: ReadingRecord | null; record?: never };

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

/** What the bench knows of one balance: its lines, whether they are fresh, whether they have settled. */
export interface Feed {
  latest(): Latest;
  /** the last lines and events as received, oldest first */
  recent(): readonly LineRecord[];
  /** state of the connection as a sentence: the newest event that is no fault of a single line, or null */
  trouble(): LineRecord | null;
  /** calls back for every line and event; returns the function that ends it */
  onLine(listener: (record: LineRecord) => void): () => void;
  /**
   * Takes a settled reading from lines that arrive after the request. Rejects with NotCaptured: another capture is
   * under way, the balance was lost or fell silent, or patience ran out; the message says which and what to do.
   */
  capture(request?: CaptureRequest): Promise<Captured>;
  /** who is waiting for a capture and why it waits, or null */
  capturing(): { by: string; because: string } | null;
  stop(): void;
}

/** How long a capture waits for the balance to settle, ms. */
export const capturePatienceMs = 60_000;

export function createFeed(options: FeedOptions): Feed {
  const { balance, clock = systemClock, patienceMs = defaultPatienceMs, settling = usualSettling } = options;
  const startedMs = clock.monotonicMs();
  const lines: LineRecord[] = [];
  let readings: ReadingRecord[] = [];
  let connection: LineRecord | null = null;
  let waiting: { by: string; because: string; hear: (record: LineRecord) => void } | null = null;

  const stop = balance.onLine((record) => {
    lines.push(record);
    if (lines.length > keptLines) lines.shift();
    if (record.reading) {
      readings.push(record);
      if (readings.length > keptLines) readings.shift();
      connection = null;
    } else if (endsTheReading(record)) {
      readings = [];
      connection = record;
    } else if (record.event.kind === "open" || record.event.kind === "back") connection = record;
    waiting?.hear(record);
  });

  function capture(request: CaptureRequest = {}): Promise<Captured> {
    const { by = "the bench", byHand = false, patienceMs: wait = capturePatienceMs } = request;
    const after = request.afterMonotonicMs ?? clock.monotonicMs();
    if (waiting)
      return Promise.reject(
        new NotCaptured(
          `${waiting.by} is taking a reading from the ${balance.name} at this moment. Wait until it is taken; nothing was captured twice.`,
        ),
      );
    return new Promise((resolve, reject) => {
      const heard: ReadingRecord[] = [];
      const callOff = clock.after(wait, () =>
        giveUp(
          `Nothing was captured within ${wait / 1000} s. ${waiting?.because ?? ""} Shield the balance from draught, or take it by hand.`,
        ),
      );
      const aborted = () => giveUp("The capture was called off. Nothing was taken.");
      request.signal?.addEventListener("abort", aborted, { once: true });

      function end(): void {
        waiting = null;
        callOff();
        request.signal?.removeEventListener("abort", aborted);
      }
      function giveUp(because: string): void {
        end();
        reject(new NotCaptured(because));
      }
      function take(settledBy: Captured["settledBy"], from: ReadingRecord[]): void {
        end();
        const newest = from.at(-1)!;
        resolve({ reading: newest.reading, settledBy, at: newest.at, lines: from });
      }
      function hear(record: LineRecord): void {
        if (record.monotonicMs <= after) return;
        if (!record.reading) {
          if (endsTheReading(record)) heard.length = 0;
          if (waiting) waiting.because = record.event.says;
          if (record.event.kind === "lost") giveUp(`${record.event.says} Nothing was captured.`);
          return;
        }
        heard.push(record);
        if (byHand) {
          take("by-hand", [record]);
          return;
        }
        const judgement = judge(heard, settling);
        if (judgement.settled) take(judgement.by, judgement.lines);
        else if (waiting) waiting.because = judgement.because;
      }
      waiting = { by, because: "Waiting for the next line.", hear };
      if (request.signal?.aborted) aborted();
    });
  }

  return {
    latest() {
      const last = readings.at(-1) ?? null;
      const ageMs = clock.monotonicMs() - (last?.monotonicMs ?? startedMs);
      if (last && ageMs <= patienceMs) return { record: last, judgement: judge(readings, settling) };
      return { silentForSeconds: ageMs / 1000, last: lastReading(lines) };
    },
    recent: () => lines,
    trouble: () => connection,
    onLine: balance.onLine,
    capture,
    capturing: () => (waiting ? { by: waiting.by, because: waiting.because } : null),
    stop,
  };
}

const endings = new Set([
  "lost",
  "silent",
  "overload",
  "underload",
  "not-a-weight",
  "unit-missing",
  "trouble",
]);

/** Events after which earlier readings no longer count: what is on the pan now is not what they said. */
function endsTheReading(record: LineRecord): boolean {
  return record.event !== undefined && endings.has(record.event.kind);
}

function lastReading(lines: readonly LineRecord[]): ReadingRecord | null {
  const found = lines.findLast((record) => record.reading);
  return found?.reading ? found : null;
}
