import type { Captured } from "../../drivers/captured.ts";
import type { Feed } from "../../drivers/feed.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import type { Live, Scale, TakenReading, Taking } from "./scale.ts";

/** The balance of a cable as the bench uses it. */
export function scaleOf(name: string, feed: Feed): Scale {
  let newest: LineRecord | undefined;
  feed.onLine((record) => {
    newest = record;
  });
  return {
    name,
    live: () => liveOf(feed, newest),
    take: () => takingFrom(name, feed),
    doubts: () => feed.doubts(),
    settleDoubt(kind) {
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

function takingFrom(name: string, feed: Feed): Taking {
  let waiting = new AbortController();
  let byHand = false;
  const settled = (async (): Promise<TakenReading> => {
    try {
      return taken(name, await feed.capture({ signal: waiting.signal }));
    } catch (error) {
      if (!byHand) throw error;
      waiting = new AbortController();
      return taken(name, await feed.capture({ signal: waiting.signal, byHand: true }));
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

function taken(name: string, captured: Captured): TakenReading {
  return {
    text: captured.reading.text,
    unit: captured.reading.unit,
    takenBy: captured.settledBy,
    balance: name,
    lines: captured.lines.map(({ at, monotonicMs, raw }) => ({ at, monotonicMs, raw })),
  };
}
