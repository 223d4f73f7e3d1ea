import type { Message } from "../calibration/message.ts";
import { Refusal } from "../calibration/refusal.ts";
import type { KnownDisplay } from "../calibration/stable-reading/known-display.ts";
import { Loads } from "../calibration/stable-reading/loads.ts";
import { isAnotherLoad, type Judgement } from "../calibration/stable-reading/stable-reading.ts";
import { nameMessage } from "./balance-name.ts";
import { beginCapture, type CaptureRequest, type PendingCapture } from "./capture.ts";
import type { Captured } from "./captured.ts";
import { type Clock, systemClock } from "./clock.ts";
import { type ConnectionCheck, createConnectionChecks } from "./connection-checks.ts";
import type { Balance } from "./device.ts";
import { defaultPatienceMs } from "./listening.ts";
import { endsTheLoad, endsTheReading, type LineRecord } from "./reading.ts";
import { createStableLines, type ReadingRecord } from "./steadiness.ts";
import { createTakenWatch } from "./taken-watch.ts";

/** How many of the last lines are kept for judging and for showing as received. */
const keptLines = 200;

export interface ReadingStreamOptions {
  balance: Balance;
  clock?: Clock;
  /** a reading older than this is no reading any more, ms; by default what the balance itself says */
  patienceMs?: number;
  /** how lines come: by themselves, one per press of the balance's key, or one per request of ours */
  sends?: "by-itself" | "on-key" | "on-request";
}

/** The newest reading, or how long there has been none. No function gives an old number without its age. */
export type Latest =
  | { record: ReadingRecord; isAtRest: boolean; silentForSeconds?: never }
  | { silentForSeconds: number; last: ReadingRecord | null; record?: never };

/** What the bench knows of one balance: its lines, whether they are fresh, whether they have settled. */
export interface ReadingStream {
  latest(): Latest;
  /** the last lines and events as received, oldest first */
  recent(): readonly LineRecord[];
  /** the newest event about the connection or the load, while it still holds; null when readings come */
  error(): LineRecord | null;
  /** what a person has to look at before weighing on, such as the zero after a lost cable */
  checks(): readonly ConnectionCheck[];
  /** a person looked and answered */
  answerCheck(kind: ConnectionCheck["kind"]): void;
  /** calls back for every line and event; returns the function that ends it */
  onLine(listener: (record: LineRecord) => void): () => void;
  /**
   * Takes a settled reading from lines that arrive after the request. Rejects with Refusal: another capture is
   * under way, the balance was lost or may be another one, or patience ran out.
   */
  capture(request?: CaptureRequest): Promise<Captured>;
  /** what is known of the noise of this display, from its readings at rest */
  known(): KnownDisplay;
  /** whether the load was seen at rest and still is */
  isAtRest(): boolean;
  /** whether the load that was captured last still lies there */
  holdsTaken(): boolean;
  /** calls back once with g when the display moves on after a take while the load stays; returns the function that ends it */
  onMoved(listener: (grams: number) => void): () => void;
  /** in so many s a creep of the load at rest will be excluded, if nothing comes; undefined where none is possible */
  watchesFor(): number | undefined;
  /** calls back when a creep of the load at rest is excluded; returns the function that ends it */
  onCreepExcluded(listener: () => void): () => void;
  /** why the capture that waits has taken nothing yet; null while none waits */
  waitsBecause(): Message | null;
  stop(): void;
}

/** A request that brought no line is sent again after so many ms while a capture waits. */
const askAgainMs = 1000;

export function createReadingStream(options: ReadingStreamOptions): ReadingStream {
  const { balance, clock = systemClock, sends = "by-itself" } = options;
  const patienceMs = options.patienceMs ?? freshFor(balance);
  const startedMs = clock.monotonicMs();
  const checks = createConnectionChecks();
  let lines: LineRecord[] = [];
  let readings: ReadingRecord[] = [];
  let error: LineRecord | null = null;
  let pending: PendingCapture | null = null;
  let stillRaw: string | null = null;
  let stirred = true;
  const lineOf = createStableLines();
  const loads = new Loads();
  let judgement: Judgement = { state: "waiting" };
  const watch = createTakenWatch();
  const whenExcluded = new Set<() => void>();

  const stopHearing = balance.onLine((record) => {
    lines = [...lines.slice(-keptLines + 1), record];
    checks.hear(record, () => balance.identity?.() ?? null);
    if (record.reading) {
      stirred ||= record.raw !== stillRaw;
      readings = [...readings.slice(-keptLines + 1), record];
      error = null;
      const line = lineOf(record);
      const heard = loads.hear(line);
      judgement = heard.judgement;
      watch.hear(line);
      if (heard.excluded) for (const listener of whenExcluded) listener();
    } else if (endsTheReading(record)) {
      readings = [];
      error = record;
      if (endsTheLoad(record)) watch.end();
      loads.anew();
      judgement = { state: "waiting" };
    } else if (record.event.kind === "back" || record.event.kind === "open") error = null;
    pending?.hear(record);
  });

  function capture(request: CaptureRequest = {}): Promise<Captured> {
    if (pending)
      return Promise.reject(new Refusal("balance.capture.under-way", { balance: nameMessage(balance.name) }));
    const other = checks.open().find(({ kind }) => kind === "another-balance");
    if (other) return Promise.reject(new Refusal(other.message.code, other.message.params));
    let callOffAsking = () => {};
    const begun = beginCapture(request, {
      clock,
      lineOf,
      known: () => loads.known(),
      rested: isAtRest(),
      possible,
      offer: () => (judgement.state === "drifting" ? judgement.offer : undefined),
      taken: watch.begin,
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
    watch.end();
    function ask(): void {
      balance.ask?.();
      callOffAsking = clock.after(askAgainMs, ask);
    }
    if (sends === "on-request") ask();
    return begun.result;
  }

  /** What a creep may still bring to the load at rest, g; undefined while none is known to rest. */
  function possible(): number | undefined {
    if (judgement.state === "taken") return judgement.taken.possible;
    if (judgement.state !== "after" || judgement.moved !== undefined) return undefined;
    return judgement.possibleForSeconds === undefined ? 0 : judgement.taken.possible;
  }

  /** A line that came on a key or a request has nothing before it to be judged by; its own mark is all there is. */
  function isAtRest(): boolean {
    const last = readings.at(-1);
    if (sends !== "by-itself") return last?.reading.stability === "stable";
    if (!last || !("taken" in judgement) || (judgement.state === "after" && judgement.moved !== undefined))
      return false;
    // on its way to another load it shows nothing that rests
    return !isAnotherLoad(
      { value: Number(last.reading.grams), step: judgement.taken.step },
      judgement.taken.value,
    );
  }

  return {
    latest() {
      const last = readings.at(-1) ?? null;
      const before = last ?? lastReading(lines);
      const ageMs = clock.monotonicMs() - (before?.monotonicMs ?? startedMs);
      if (last && ageMs <= Math.min(patienceMs, paceMs(readings)))
        return { record: last, isAtRest: isAtRest() };
      return { silentForSeconds: ageMs / 1000, last: before };
    },
    recent: () => lines,
    error: () => error,
    checks: checks.open,
    answerCheck: checks.answer,
    onLine: balance.onLine,
    capture,
    known: () => loads.known(),
    isAtRest,
    holdsTaken: () => watch.holds,
    onMoved: watch.onMoved,
    watchesFor: () => (isAtRest() && judgement.state === "after" ? judgement.possibleForSeconds : undefined),
    onCreepExcluded(listener) {
      whenExcluded.add(listener);
      return () => whenExcluded.delete(listener);
    },
    waitsBecause: () => pending?.because() ?? null,
    stop: stopHearing,
  };
}

/** A balance that sends on its key has no cadence to judge by; its last line still grows old. */
function freshFor({ patienceMs = defaultPatienceMs }: Balance): number {
  return Number.isFinite(patienceMs) ? patienceMs : defaultPatienceMs;
}

/** Gaps between readings that tell the pace, and how much longer a gap may be before the last number is old, ms. */
const gapsOfPace = 10;
const overPaceMs = 1000;

/** How old the last of these readings may be: the longest of the last gaps and a second; no limit before a pace is seen. */
function paceMs(readings: readonly ReadingRecord[]): number {
  const last = readings.slice(-gapsOfPace - 1);
  if (last.length < 4) return Number.POSITIVE_INFINITY;
  const gaps = last.slice(1).map(({ monotonicMs }, i) => monotonicMs - last[i]!.monotonicMs);
  return Math.max(...gaps) + overPaceMs;
}

function lastReading(lines: readonly LineRecord[]): ReadingRecord | null {
  const found = lines.findLast((record) => record.reading);
  return found?.reading ? found : null;
}
