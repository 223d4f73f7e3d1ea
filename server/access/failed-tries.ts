/** Tries in a row that need no wait. */
const freeTries = 5;
const firstWaitMs = 30_000;
const longestWaitMs = 15 * 60_000;
/** After so long without a try the count begins anew, ms. */
const forgottenMs = 60 * 60_000;

/** Counts tries that failed in a row, by initials and by address, and tells how long to wait; each further one doubles the wait. */
export class FailedTries {
  readonly #now: () => number;
  readonly #tries = new Map<string, { count: number; last: number }>();

  constructor(now: () => number) {
    this.#now = now;
  }

  /** Seconds until a try counts again; 0 when it counts now. */
  wait(keys: readonly string[]): number {
    return Math.max(...keys.map((key) => this.#waitOf(key)));
  }

  /** A try begins: it counts as failed until `passed`, so that many at once are no more than one after the other. */
  begun(keys: readonly string[]): void {
    this.#forget();
    for (const key of keys)
      this.#tries.set(key, { count: (this.#tries.get(key)?.count ?? 0) + 1, last: this.#now() });
  }

  passed(keys: readonly string[]): void {
    for (const key of keys) this.#tries.delete(key);
  }

  #waitOf(key: string): number {
    const tries = this.#tries.get(key);
    if (!tries || tries.count < freeTries) return 0;
    const waitMs = Math.min(longestWaitMs, firstWaitMs * 2 ** (tries.count - freeTries));
    return Math.max(0, Math.ceil((tries.last + waitMs - this.#now()) / 1000));
  }

  #forget(): void {
    for (const [key, { last }] of this.#tries) if (last + forgottenMs < this.#now()) this.#tries.delete(key);
  }
}
