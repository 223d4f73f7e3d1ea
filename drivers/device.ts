import type { LineRecord, Reading } from "./reading.ts";

/**
 * A source of readings R: a serial line, a network line, a USB device, a simulation. Every line that arrives and every
 * change of the connection is told to the listeners as it happens.
 */
export interface Device<R> {
  /** for people: "balance on /dev/serial/by-id/…", "simulated balance" */
  readonly name: string;
  /** starts listening; resolves at once, trouble is told as an event and opening is tried again */
  start(): void;
  /** closes the line for good */
  stop(): Promise<void>;
  /** calls back for every line and event from now on; returns the function that ends it */
  onLine(listener: (record: LineRecord<R>) => void): () => void;
  /** sends the owner's own request once, where a capture has to ask for its line */
  ask?(): void;
  /** what sits at the other end of the cable, in words that differ between two devices; null when it cannot be known */
  identity?(): string | null;
  /** when its first byte came, by the monotonic clock, ms; undefined before there was one */
  firstByteMs?(): number | undefined;
  /** silence after which a reading of this balance is old, ms; Infinity where lines come on a key or on request */
  readonly patienceMs?: number;
}

/** A device that reads weights. */
export type Balance = Device<Reading>;
