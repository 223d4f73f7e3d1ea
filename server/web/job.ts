import { setTimeout as pause } from "node:timers/promises";
import { message } from "../../calibration/message.ts";
import type { Sentence } from "../../views/sentence.tsx";
import type { Steps } from "../ledger/turns.ts";
import { refusedBy } from "./refused.ts";

/** Long work: how far it is, and how it ended. */
export interface Job<Done> {
  /** how much there is to do, and how much of it was done so far */
  readonly of: number;
  readonly seen: number;
  /** what it came to, whether it was stopped before its end, or why it failed; undefined while it goes on */
  readonly outcome: { done?: Done; stopped: boolean } | { message: Sentence } | undefined;
  /** resolves when it ended, either way */
  readonly ended: Promise<void>;
  /** Ends it between two steps. */
  stop(): void;
}

/** What ends so soon is answered with what came of it, ms. */
const soonMs = 1500;
/** A page that shows how far work is looks again after so many seconds. */
export const lookAgainSeconds = 2;

/** Waits a moment for work that is short. */
export function soon({ ended }: Job<unknown>): Promise<unknown> {
  return Promise.race([ended, pause(soonMs)]);
}

/** Begins long work while the bench goes on with everything else. A stop may reject with the reason of the signal. */
export function job<Done>(of: number, work: (steps: Required<Steps>) => Promise<Done>): Job<Done> {
  const stopping = new AbortController();
  const { signal } = stopping;
  let seen = 0;
  let outcome: Job<Done>["outcome"];
  const onProgress = (done: number) => {
    seen = done;
  };
  const ended = work({ onProgress, signal })
    .then((done) => {
      outcome = { done, stopped: signal.aborted && seen < of };
    })
    .catch((error: unknown) => {
      if (error === signal.reason) {
        outcome = { stopped: true };
        return;
      }
      const refused = refusedBy(error);
      outcome = { message: refused?.message ?? message("refusal.program-error") };
      // whoever still waits is answered as for every error of the program; who looks later finds that it ended
      if (refused) return;
      console.error(error);
      throw error;
    });
  return {
    of,
    get seen() {
      return seen;
    },
    get outcome() {
      return outcome;
    },
    ended,
    stop: () => stopping.abort(),
  };
}
