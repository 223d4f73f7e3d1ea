import type { Balance } from "./balance.ts";
import { beginCapture, type CaptureRequest, type PendingCapture } from "./capture.ts";
import { type Captured, NotCaptured } from "./captured.ts";
import { type Clock, systemClock } from "./clock.ts";
import { createDoubts, type Doubt } from "./doubts.ts";
import { defaultPatienceMs } from "./listening.ts";
import { endsTheReading, type LineRecord } from "./reading.ts";
import {
  type Judgement,
  judge,
  onKeySettling,
  type ReadingRecord,
  type Settling,
  usualSettling,
} from "./steadiness.ts";

/** How many of the last lines are kept for judging and for showing as received. */
export const keptLines = 200;

export interface FeedOptions {
  balance: Balance;
  clock?: Clock;
  /** a reading older than this is no reading any more, ms; by default what the balance itself says */
  patienceMs?: number;
  settling?: Settling;
  /** how lines come: by themselves, one per press of the balance's key, or one per request of ours */
  sends?: "by-itself" | "on-key" | "on-request";
}

/** The newest reading, or how long there has been none. No function gives an old number without its age. */
export type Latest =
  | { record: ReadingRecord; judgement: Judgement; silentForSeconds?: never }
  | { silentForSeconds: number; last: ReadingRecord | null; record?: never };

/** What the bench knows of one balance: its lines, whether they are fresh, whether they have settled. */
export interface Feed {
  latest(): Latest;
  /** the last lines and events as received, oldest first */
  recent(): readonly LineRecord[];
  /** the newest event about the connection or the load, while it still holds; null when readings come */
  trouble(): LineRecord | null;
  /** what a person has to look at before weighing on, such as the zero after a lost cable */
  doubts(): readonly Doubt[];
  /** a person looked and answered */
  settleDoubt(kind: Doubt["kind"]): void;
  /** calls back for every line and event; returns the function that ends it */
  onLine(listener: (record: LineRecord) => void): () => void;
  /**
   * Takes a settled reading from lines that arrive after the request. Rejects with NotCaptured: another capture is
   * under way, the balance was lost or may be another one, or patience ran out; the message says which and what to do.
   */
  capture(request?: CaptureRequest): Promise<Captured>;
  /** who is waiting for a capture and why it waits, or null */
  capturing(): { by: string; because: string } | null;
  stop(): void;
}

/** A request that brought no line is sent again after so many ms while a capture waits. */
const askAgainMs = 1000;

export function createFeed(options: FeedOptions): Feed {
  const { balance, clock = systemClock, sends = "by-itself" } = options;
  const patienceMs = options.patienceMs ?? freshFor(balance);
  const settling = options.settling ?? (sends === "on-key" ? onKeySettling : usualSettling);
  const startedMs = clock.monotonicMs();
  const doubts = createDoubts();
  let lines: LineRecord[] = [];
  let readings: ReadingRecord[] = [];
  let trouble: LineRecord | null = null;
  let pending: PendingCapture | null = null;
  let stillRaw: string | null = null;
  let stirred = true;

  const stopHearing = balance.onLine((record) => {
    lines = [...lines.slice(-keptLines + 1), record];
    doubts.hear(record, () => balance.identity?.() ?? null);
    if (record.reading) {
      stirred ||= record.raw !== stillRaw;
      readings = [...readings.slice(-keptLines + 1), record];
      trouble = null;
    } else if (endsTheReading(record)) {
      readings = [];
      trouble = record;
    }
    pending?.hear(record);
  });

  function capture(request: CaptureRequest = {}): Promise<Captured> {
    if (pending)
      return Promise.reject(
        new NotCaptured(
          `${pending.by} is taking a reading from the ${balance.name} at this moment. Wait until it is taken; nothing was captured twice.`,
        ),
      );
    const stranger = doubts.open().find(({ kind }) => kind === "another-balance");
    if (stranger) return Promise.reject(new NotCaptured(stranger.says));
    let callOffAsking = () => {};
    const begun = beginCapture(request, {
      clock,
      settling,
      onKey: sends === "on-key",
      asked: sends === "on-request",
      // a balance that is asked, or sends on its key, is not seen in between
      stirred: () => stirred || sends !== "by-itself",
      ended() {
        pending = null;
        callOffAsking();
        stillRaw = readings.at(-1)?.raw ?? null;
        stirred = false;
      },
    });
    pending = begun;
    function ask(): void {
      balance.ask?.();
      callOffAsking = clock.after(askAgainMs, ask);
    }
    if (sends === "on-request") ask();
    return begun.result;
  }

  return {
    latest() {
      const last = readings.at(-1) ?? null;
      const ageMs = clock.monotonicMs() - (last?.monotonicMs ?? startedMs);
      if (last && ageMs <= patienceMs) return { record: last, judgement: judge(readings, settling) };
      return { silentForSeconds: ageMs / 1000, last: lastReading(lines) };
    },
    recent: () => lines,
    trouble: () => trouble,
    doubts: doubts.open,
    settleDoubt: doubts.settle,
    onLine: balance.onLine,
    capture,
    capturing: () => (pending ? { by: pending.by, because: pending.because() } : null),
    stop: stopHearing,
  };
}

/** A balance that sends on its key has no cadence to judge by; its last line still grows old. */
function freshFor({ patienceMs = defaultPatienceMs }: Balance): number {
  return Number.isFinite(patienceMs) ? patienceMs : defaultPatienceMs;
}

function lastReading(lines: readonly LineRecord[]): ReadingRecord | null {
  const found = lines.findLast((record) => record.reading);
  return found?.reading ? found : null;
}
