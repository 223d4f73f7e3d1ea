import { dirname } from "node:path";
import { type Message, message } from "../../calibration/message.ts";
import { reasonOf } from "../../calibration/reason.ts";
import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { RowsReached } from "../ledger/rows-reached.ts";
import { cloudEventOf, deliveredKinds, eventType } from "./cloud-event.ts";
import { signatureHeaders } from "./signature.ts";

/** How it stands with one address. */
export interface WebhookState {
  url: string;
  /** events that wait to be sent; counted up to a hundred */
  waiting: number;
  /** why the last one was not taken; null when it was */
  why: Message | null;
}

export interface DeliveryOptions {
  now: () => Date;
  /** resolves after so many ms, or at once when the signal is aborted */
  sleep: (ms: number, signal: AbortSignal) => Promise<void>;
}

/** How often is looked for what is new, and for an address while there is none, ms. */
const every = { newsMs: 1000, addressMs: 10_000 };
/** The pause after an event that was not taken doubles from the first to the second, ms. */
const pauses = { first: 1000, longest: 10 * 60_000 };
/** An address that does not answer within so long did not take the event, ms. */
const patienceMs = 10_000;
const atOnce = 100;

/**
 * Tells each address that was chosen of what happens, in order and until it took it: the queue is the ledger itself. An
 * address that refuses or is silent holds up no other one and nothing at the bench.
 */
export function keepDelivering(ledger: Ledger, { now, sleep }: DeliveryOptions) {
  const ended = new AbortController();
  const sent = new RowsReached(dirname(ledger.place), "webhooks-sent.json");
  const states = new Map<string, WebhookState>();
  /** an address that is slow to answer is asked no second time meanwhile */
  const underWay = new Map<string, Promise<void>>();
  const notBefore = new Map<string, { ms: number; pauseMs: number }>();

  const waitingFor = async (url: string, from: number) =>
    ledger.entries({
      after: Math.max(sent.row(url) ?? 0, from),
      kind: [...deliveredKinds],
      own: true,
      limit: atOnce,
    });

  const deliver = async (url: string, from: number) => {
    const due = notBefore.get(url);
    const waiting = await waitingFor(url, from);
    states.set(url, { url, waiting: waiting.length, why: states.get(url)?.why ?? null });
    if (due && now().getTime() < due.ms) return;
    for (const [place, entry] of waiting.entries()) {
      const why = await refusalBy(url, entry);
      states.set(url, { url, waiting: waiting.length - place - (why ? 0 : 1), why });
      if (why) {
        const pauseMs = due ? Math.min(2 * due.pauseMs, pauses.longest) : pauses.first;
        notBefore.set(url, { ms: now().getTime() + pauseMs, pauseMs });
        return;
      }
      notBefore.delete(url);
      sent.set(url, entry.seq);
    }
  };

  const refusalBy = async (url: string, entry: Entry): Promise<Message | null> => {
    const body = JSON.stringify(cloudEventOf(entry, await ledger.name()));
    const request = { method: "POST", url, contentType: eventType, body };
    const { key } = ledger;
    const signature = key ? signatureHeaders(request, key, Math.floor(now().getTime() / 1000)) : {};
    try {
      const { ok, status } = await fetch(url, {
        ...{ method: "POST", body, redirect: "error" },
        headers: { "content-type": eventType, ...signature },
        signal: AbortSignal.any([ended.signal, AbortSignal.timeout(patienceMs)]),
      });
      return ok ? null : message("webhooks.refused", { status: String(status) });
    } catch (cause) {
      const inner = cause instanceof Error ? cause.cause : undefined;
      return message("webhooks.not-reached", { cause: reasonOf(inner ?? cause) });
    }
  };

  const once = async () => {
    const chosen = await webhooksOf(ledger);
    for (const url of states.keys()) if (!chosen.some((one) => one.url === url)) states.delete(url);
    for (const { url, from } of chosen) {
      if (underWay.has(url)) continue;
      const delivered = deliver(url, from)
        .catch(() => undefined)
        .finally(() => underWay.delete(url));
      underWay.set(url, delivered);
    }
  };

  const running = (async () => {
    while (!ended.signal.aborted) {
      await once().catch(() => undefined);
      await sleep(states.size > 0 ? every.newsMs : every.addressMs, ended.signal);
    }
  })();

  return {
    states: (): WebhookState[] => [...states.values()],
    async stop() {
      ended.abort();
      await running;
      await Promise.all(underWay.values());
    },
  };
}

/** The addresses that are told now, each with the row after which it was chosen. */
export async function webhooksOf(ledger: Ledger): Promise<{ url: string; from: number }[]> {
  const entries = await ledger.entries({ kind: "webhooks" });
  let chosen = new Map<string, number>();
  for (const entry of entries)
    if (entry.kind === "webhooks")
      chosen = new Map(entry.body.urls.map((url) => [url, chosen.get(url) ?? entry.seq]));
  return [...chosen].map(([url, from]) => ({ url, from }));
}
