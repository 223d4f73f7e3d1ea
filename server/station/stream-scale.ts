import { type Message, message } from "../../calibration/message.ts";
import { stepGrams } from "../../calibration/units.ts";
import { createAutoCapture } from "../../drivers/auto-capture.ts";
import type { AtRest, Captured } from "../../drivers/captured.ts";
import type { Reading as DriverReading, LineRecord } from "../../drivers/reading.ts";
import type { ReadingStream } from "../../drivers/reading-stream.ts";
import type {
  EachLoadAsked,
  EachLoadStep,
  Live,
  Scale,
  ScaleCheck,
  TakenReading,
  Taking,
  TracePoint,
} from "./scale.ts";

/** The balance of a cable as the bench uses it; `kept` is the learned profile its lines are read by. */
export function scaleOf(
  name: string,
  stream: ReadingStream,
  kept?: { name: string; version: number },
): Scale {
  let newest: LineRecord | undefined;
  let raised: ScaleCheck | undefined;
  const profile = kept && `${kept.name}, version ${kept.version}`;
  stream.onLine((record) => {
    newest = record;
  });
  const checks = () => (raised ? [raised, ...stream.checks()] : stream.checks());
  return {
    name,
    live: () => liveOf(stream, newest),
    take: () => takingFrom({ name, profile }, stream),
    takeEach: (asked, step) => takeEach({ name, profile }, stream, checks, asked, step),
    waitsBecause: () => stream.waitsBecause() ?? undefined,
    checks,
    raiseCheck(check: Message) {
      raised = { kind: "exchanged", message: check, since: new Date().toISOString() };
    },
    answerCheck(kind) {
      if (raised?.kind === kind) raised = undefined;
      for (const check of stream.checks()) if (check.kind === kind) stream.answerCheck(check.kind);
    },
    onMoved: (listener) => stream.onMoved(listener),
    onCreepExcluded: (listener) => stream.onCreepExcluded(listener),
    onLine: (listener) => stream.onLine(() => listener()),
  };
}

function liveOf(stream: ReadingStream, newest: LineRecord | undefined): Live {
  const latest = stream.latest();
  if (latest.record) {
    const { reading, at } = latest.record;
    const { text, unit } = reading;
    const unsettled = reading.stability === "stable" ? "moving" : reading.stability;
    const stability = latest.isAtRest ? "stable" : unsettled;
    const { record } = latest;
    const watchesForSeconds = stream.watchesFor();
    return {
      ...{ state: "reading", text, unit, stability, at },
      ...(watchesForSeconds !== undefined && { watchesForSeconds }),
      // asked for by the page that draws it alone, not for each line of each balance
      get trace() {
        return traceOf(stream.recent(), record);
      },
    };
  }
  const error = stream.error();
  if (error?.event && error.event.kind !== "open" && error.event.kind !== "silent")
    return { state: "event", message: error.event, at: error.at };
  if (newest?.event?.kind === "unknown-line") return { state: "event", message: newest.event, at: newest.at };
  const seconds = latest.silentForSeconds;
  return {
    state: "silent",
    forSeconds: seconds,
    message: message("balance.live.silent", { seconds: Math.floor(seconds) }),
    ...(latest.last ? { last: { text: latest.last.reading.text, unit: latest.last.reading.unit } } : {}),
  };
}

/** The last so many seconds are drawn, from at most two readings a second. */
const traceSeconds = 30;
const traceApartSeconds = 0.5;

/** The readings of the last half minute up to the newest, oldest first. */
function traceOf(recent: readonly LineRecord[], newest: LineRecord): TracePoint[] {
  const points: TracePoint[] = [];
  for (const { reading, monotonicMs } of recent.toReversed()) {
    const secondsAgo = (newest.monotonicMs - monotonicMs) / 1000;
    if (secondsAgo > traceSeconds) break;
    if (!reading || secondsAgo - (points.at(-1)?.secondsAgo ?? -1) < traceApartSeconds) continue;
    points.push({ secondsAgo, grams: Number(reading.grams) });
  }
  return points.reverse();
}

function takeEach(
  source: Source,
  stream: ReadingStream,
  checks: Scale["checks"],
  asked: EachLoadAsked,
  step: (now: EachLoadStep) => void,
): () => void {
  const known = () => stream.known();
  let auto = createAutoCapture({ ...asked, known, rested: stream.isAtRest(), isTaken: stream.holdsTaken() });
  let lastSent: string | undefined;
  return stream.onLine((record) => {
    const [check] = checks();
    if (check && lastSent === check.kind) return step({ message: check.message });
    lastSent = check?.kind;
    if (check) {
      // whatever lies there once somebody looked at the balance is lifted first
      auto = createAutoCapture({ ...asked, known, isTaken: true });
      return step({ message: check.message, event: "refused" });
    }
    const { taken: settled, message, event } = auto.hear(record);
    step({ message, ...(event && { event }), ...(settled && { taken: taken(source, settled) }) });
  });
}

interface Source {
  name: string;
  profile: string | undefined;
}

function takingFrom(source: Source, stream: ReadingStream): Taking {
  let waiting = new AbortController();
  let byHand = false;
  const settled = (async (): Promise<TakenReading> => {
    try {
      return taken(source, await stream.capture({ signal: waiting.signal }));
    } catch (error) {
      if (!byHand) throw error;
      waiting = new AbortController();
      return taken(source, await stream.capture({ signal: waiting.signal, byHand: true }));
    }
  })();
  return {
    settled,
    byHand() {
      byHand = true;
      waiting.abort();
    },
    cancel() {
      byHand = false;
      waiting.abort();
    },
  };
}

function taken(
  { name, profile }: Source,
  captured: Pick<Captured, "reading" | "settledBy" | "lines" | "atRest"> & { stirred?: boolean },
): TakenReading {
  return {
    text: captured.reading.text,
    unit: captured.reading.unit,
    takenBy: captured.settledBy,
    balance: name,
    ...(profile === undefined ? {} : { profile }),
    ...(captured.atRest && { atRest: atRestOf(captured.atRest, captured.reading) }),
    ...(captured.stirred === false ? { unmoved: true as const } : {}),
    lines: captured.lines.map(({ at, monotonicMs, raw }) => ({ at, monotonicMs, raw })),
  };
}

/** Shown further from where it was going than one step, the rest of the way counts as drift, too. */
function atRestOf(
  { grams, uGrams, driftUGrams, possibleGrams, flags }: AtRest,
  { text, unit, grams: shown }: DriverReading,
) {
  const away = Math.max(0, Math.abs(Number(shown) - grams) - stepGrams(text, unit));
  const possible = possibleGrams > 0 && { possible_g: possibleGrams };
  return { grams, u_g: uGrams, drift_u_g: Math.hypot(driftUGrams, away), ...possible, flags };
}
