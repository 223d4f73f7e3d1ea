import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { type Detection, detect, type Tried } from "../../drivers/detection.ts";
import { cableOf } from "./balance-choice.ts";
import type { BalanceInUse } from "./balance-in-use.ts";

/** Looking for speed, bits and parity of a balance by listening; one search at a time, and nothing is sent. */
export class LineSearch {
  port: string | undefined;
  outcome: Detection | undefined;
  /** the setting that is listened at now, and what came back at those before it */
  now: string | undefined;
  tried: readonly Tried[] = [];
  #balance: BalanceInUse;
  #listenMs: number | undefined;
  #changed: () => void;
  #stopping: AbortController | undefined;

  constructor(balance: BalanceInUse, changed: () => void, listenMs?: number) {
    this.#balance = balance;
    this.#changed = changed;
    this.#listenMs = listenMs;
  }

  get running(): boolean {
    return this.#stopping !== undefined;
  }

  /** Begins; the outcome comes later. A balance that is heard on this port lets go of it meanwhile. */
  begin(path: string): void {
    if (this.running) throw new Refusal("port.search.running", { port: this.port ?? "" });
    if (!path.startsWith("/") || cableOf(path) !== "serial")
      throw new Refusal("port.search.not-serial", { port: path }, "port");
    const stopping = new AbortController();
    this.#stopping = stopping;
    this.port = path;
    this.outcome = undefined;
    this.tried = [];
    void this.#search(path, stopping).finally(() => {
      this.#stopping = undefined;
      this.now = undefined;
      this.#changed();
    });
  }

  stop(): void {
    this.#stopping?.abort();
  }

  async #search(path: string, { signal }: AbortController): Promise<void> {
    const goBack = await this.#balance.letGo(path);
    try {
      const listenMs = this.#listenMs;
      const outcome = await detect({
        path,
        signal,
        onStep: (now, tried) => {
          this.now = now;
          this.tried = [...tried];
          this.#changed();
        },
        ...(listenMs === undefined ? {} : { listenMs }),
      });
      this.tried = outcome.tried;
      this.outcome =
        signal.aborted && outcome.line === null
          ? { ...outcome, message: message("port.search.stopped") }
          : outcome;
    } finally {
      await goBack();
    }
  }
}
