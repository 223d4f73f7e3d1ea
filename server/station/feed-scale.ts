import { type AutoCapture, createAutoCapture } from "../../drivers/auto-capture.ts";
import type { Captured } from "../../drivers/captured.ts";
import type { Feed } from "../../drivers/feed.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import type { Live, Scale, ScaleDoubt, TakenReading, Taking } from "./scale.ts";

/** The balance of a cable as the bench uses it; `kept` is the learned profile its lines are read by. */
export function scaleOf(name: string, feed: Feed, kept?: { name: string; version: number }): Scale {
  let newest: LineRecord | undefined;
  let raised: ScaleDoubt | undefined;
  const profile = kept && `${kept.name}, version ${kept.version}`;
  feed.onLine((record) => {
    newest = record;
  });
  const doubts = () => (raised ? [raised, ...feed.doubts()] : feed.doubts());
  return {
    name,
    live: () => liveOf(feed, newest),
    take: () => takingFrom({ name, profile }, feed),
    takeEach: (told) => takeEach({ name, profile }, feed, doubts, told),
    waitsBecause: () => feed.capturing()?.because,
    doubts,
    raiseDoubt(says) {
      raised = { kind: "exchanged", says, since: new Date().toISOString() };
    },
    settleDoubt(kind) {
      if (raised?.kind === kind) raised = undefined;
      for (const doubt of feed.doubts()) if (doubt.kind === kind) feed.settleDoubt(doubt.kind);
    },
    onLine: (listener) => feed.onLine(() => listener()),
  };
}

function liveOf(feed: Feed, newest: LineRecord | undefined): Live {
  const latest = feed.latest();
  if (latest.record) {
    const { reading, at } = latest.record;
    const steady = latest.judgement.settled
      ? "steady"
      : reading.steady === "steady"
        ? "moving"
        : reading.steady;
    return { state: "reading", text: reading.text, unit: reading.unit, steady, at };
  }
  const trouble = feed.trouble();
  if (trouble?.event && trouble.event.kind !== "open" && trouble.event.kind !== "silent")
    return { state: "says", says: trouble.event.says, at: trouble.at };
  if (newest?.event?.kind === "unknown-line")
    return { state: "says", says: newest.event.says, at: newest.at };
  const seconds = Math.floor(latest.silentForSeconds);
  return {
    state: "silent",
    forSeconds: latest.silentForSeconds,
    says: `Silent for ${seconds} s. An old weight is not taken: check that the balance is on, sends by itself, and is plugged in.`,
    ...(latest.last ? { last: { text: latest.last.reading.text, unit: latest.last.reading.unit } } : {}),
  };
}

function takeEach(
  source: Source,
  feed: Feed,
  doubts: Scale["doubts"],
  told: Parameters<Scale["takeEach"]>[0],
): () => void {
  let auto: AutoCapture | undefined;
  return feed.onLine((record) => {
    const [doubt] = doubts();
    if (doubt) {
      auto = undefined;
      told({ says: doubt.says });
      return;
    }
    auto ??= createAutoCapture();
    const { says, taken: settled } = auto.hear(record);
    const reading = settled?.lines.at(-1)?.reading;
    told({ says, ...(settled && reading && { taken: taken(source, { ...settled, reading }) }) });
  });
}

interface Source {
  name: string;
  profile: string | undefined;
}

function takingFrom(source: Source, feed: Feed): Taking {
  let waiting = new AbortController();
  let byHand = false;
  const settled = (async (): Promise<TakenReading> => {
    try {
      return taken(source, await feed.capture({ signal: waiting.signal }));
    } catch (error) {
      if (!byHand) throw error;
      waiting = new AbortController();
      return taken(source, await feed.capture({ signal: waiting.signal, byHand: true }));
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
  captured: Pick<Captured, "reading" | "settledBy" | "lines"> & { stirred?: boolean },
): TakenReading {
  return {
    text: captured.reading.text,
    unit: captured.reading.unit,
    takenBy: captured.settledBy,
    balance: name,
    ...(profile === undefined ? {} : { profile }),
    ...(captured.stirred === false ? { unmoved: true as const } : {}),
    lines: captured.lines.map(({ at, monotonicMs, raw }) => ({ at, monotonicMs, raw })),
  };
}
