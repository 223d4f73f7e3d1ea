import { type Message, message } from "../../calibration/message.ts";
import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";
import { replicate } from "./replicate.ts";
import { sharedWitness } from "./witness/shared-witness.ts";

/** How far the shared ledger is behind this bench's own, for the page. */
export interface ReplicationState {
  /** "up-to-date", or "waiting" for the network or the server */
  state: "up-to-date" | "waiting";
  /** ISO 8601, when everything was last handed over; null before the first time */
  lastAt: string | null;
  /** the shared ledger, without its password; null before it was first reached */
  place: string | null;
  /** why it waits; null when it does not */
  why: Message | null;
}

export interface ReplicationOptions {
  openShared: () => Promise<Ledger>;
  now: () => Date;
  /** resolves after so many ms, or at once when the signal is aborted */
  sleep: (ms: number, signal: AbortSignal) => Promise<void>;
  everyMs?: number;
  onState?: (state: ReplicationState) => void;
}

/**
 * A bench with a shared ledger goes on writing into its own file, whatever the network does; this hands over what is
 * new, again and again, and waits while the shared one cannot be reached. Nothing is lost and nothing doubled.
 */
export function keepReplicating(
  own: Ledger,
  options: ReplicationOptions,
): { state(): ReplicationState; stop(): Promise<void> } {
  const { openShared, now, sleep, everyMs = 2000, onState } = options;
  const ended = new AbortController();
  const cosign = sharedWitness(own);
  let state: ReplicationState = { state: "waiting", lastAt: null, place: null, why: null };
  let shared: Ledger | undefined;

  const once = async () => {
    try {
      shared ??= await openShared();
      await replicate(own, shared);
      await cosign(shared);
      state = { state: "up-to-date", lastAt: now().toISOString(), place: shared.place, why: null };
    } catch (cause) {
      const why = whyNot(cause, shared?.place ?? state.place);
      await shared?.close().catch(() => {});
      shared = undefined;
      state = { ...state, state: "waiting", why };
    }
    onState?.(state);
  };

  const running = (async () => {
    while (!ended.signal.aborted) {
      await once();
      await sleep(everyMs, ended.signal);
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
