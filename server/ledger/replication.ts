import { type Message, message } from "../../calibration/message.ts";
import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";
import { replicate } from "./replicate.ts";
import { othersOf } from "./shared/others.ts";
import type { SharedLedger } from "./shared/shared-ledger.ts";
import { sharedWitness } from "./witness/shared-witness.ts";

/** How far the shared ledger is behind this bench's own, for the page. */
export interface ReplicationState {
  /** "up-to-date", or "waiting" for the network or the server */
  state: "up-to-date" | "waiting";
  /** ISO 8601, when everything was last handed over; null before the first time */
  lastAt: string | null;
  /** the shared ledger, without its password; null before it was first reached */
  place: string | null;
  /** entries that the shared ledger does not have yet; null before it was first reached */
  toSend: number | null;
  /** why it waits; null when it does not */
  why: Message | null;
}

/** So often it is looked whether there is anything new here, and whether anything was heard of, ms. */
const tickMs = 200;

/** A server that did not answer is asked again after so long, ms. */
const retryMs = 2000;

/** Without an answer for so long the page says that it waits, ms. */
const silentMs = 4000;

export interface ReplicationOptions {
  /** opens the shared ledger, which lets go of what still waits once the signal is aborted */
  openShared: (ended: AbortSignal) => Promise<SharedLedger>;
  /** the benches that see each other's work */
  site?: string;
  now: () => Date;
  /** resolves after so many ms, or at once when the signal is aborted */
  sleep: (ms: number, signal: AbortSignal) => Promise<void>;
  everyMs?: number;
  onState?: (state: ReplicationState) => void;
}

/**
 * A bench with a shared ledger goes on writing into its own file, whatever the network does; this hands over what is
 * new, again and again, and waits while the shared one cannot be reached. Nothing is lost and nothing doubled. What the
 * other benches of the site did comes the same way, within a second where the server calls.
 */
export function keepReplicating(
  own: Ledger,
  options: ReplicationOptions,
): { state(): ReplicationState; stop(): Promise<void> } {
  const { openShared, site = "", now, sleep, everyMs = 5000, onState } = options;
  const ended = new AbortController();
  const cosign = sharedWitness(own);
  const seeOthers = othersOf(own);
  let state: ReplicationState = { state: "waiting", lastAt: null, place: null, toSend: null, why: null };
  let shared: SharedLedger | undefined;
  let upTo: number | null = null;
  let [news, lookedMs] = [false, Number.NEGATIVE_INFINITY];

  const change = async (changed: Partial<ReplicationState>) => {
    const head = (await own.head())?.seq ?? 0;
    state = { ...state, ...changed, toSend: upTo === null ? null : head - upTo };
    onState?.(state);
  };

  const reach = async () => {
    const opened = await openShared(ended.signal);
    opened.onNews(site, () => {
      news = true;
    });
    return opened;
  };

  const once = async () => {
    news = false;
    lookedMs = performance.now();
    const slow = setTimeout(() => {
      void change({ state: "waiting", why: message("ledger.replication.slow") });
    }, silentMs);
    try {
      shared ??= await reach();
      const { place } = shared;
      await replicate(own, shared, {
        site,
        onHanded: (seq) => {
          upTo = seq;
          slow.refresh();
        },
      });
      const chains = await shared.chains(site);
      await seeOthers(shared, chains);
      await cosign(shared, chains);
      clearTimeout(slow);
      await change({ state: "up-to-date", lastAt: now().toISOString(), place, why: null });
    } catch (cause) {
      clearTimeout(slow);
      const why = whyNot(cause, shared?.place ?? state.place);
      await shared?.close().catch(() => {});
      shared = undefined;
      await change({ state: "waiting", why });
    }
  };

  /** Something to send to a shared ledger that answers: one that did not is given its time. */
  const isNew = async () => state.state === "up-to-date" && (await own.head())?.seq !== upTo;

  const running = (async () => {
    while (!ended.signal.aborted) {
      const pauseMs = state.state === "waiting" ? Math.min(everyMs, retryMs) : everyMs;
      if (news || performance.now() - lookedMs >= pauseMs || (await isNew())) await once();
      await sleep(tickMs, ended.signal);
    }
    await shared?.close().catch(() => {});
  })();

  return {
    state: () => state,
    async stop() {
      ended.abort();
      await running;
    },
  };
}

function whyNot(cause: unknown, place: string | null): Message {
  if (cause instanceof LedgerError) return { code: cause.code, params: cause.params };
  return message("ledger.replication.failed", { place: place ?? "", cause: String(cause) });
}
