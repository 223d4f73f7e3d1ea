import { Refusal } from "../calibration/refusal.ts";
import { type AskedLines, requestBytes, usualAskingMs } from "./asked-lines.ts";
import { nameMessage } from "./balance-name.ts";
import type { Cable, OpenCable } from "./cable.ts";
import { type Clock, systemClock } from "./clock.ts";
import type { Device } from "./device.ts";
import type { LineCutter, LineCutterOptions } from "./line.ts";
import { createLineRecords } from "./line-records.ts";
import { createListening, defaultPatienceMs } from "./listening.ts";
import { errorFacts } from "./port-error.ts";
import {
  type BalanceEvent,
  type BytesReader,
  type EventCode,
  isEventCode,
  lineEvent,
  type Reading,
} from "./reading.ts";

/** Pauses before a lost cable is tried again, ms: growing, but back within two seconds of its return. */
export const reopening = { firstMs: 250, growth: 1.5, longestMs: 1500 };

/** A cable that is lost this soon after it was opened was probably taken by another program, ms. */
const takenWithinMs = 5000;

/** What every device on a cable can be told; R is what it reads. */
export interface CableOptions<R = Reading> {
  /** gives a fresh reader for every opening */
  read?: () => BytesReader<R>;
  /** cuts the stream into lines; at any line end by default */
  cutter?: (options: LineCutterOptions) => LineCutter;
  /** silence of a balance that sends by itself, ms, before it is told; Infinity for one that sends on a key */
  patienceMs?: number;
  /** the owner's request, for a balance that only answers */
  ask?: AskedLines;
  pauses?: typeof reopening;
  clock?: Clock;
}

export interface CabledDeviceOptions<R> extends CableOptions<R> {
  read: () => BytesReader<R>;
  /** as `balanceName` makes it */
  name: string;
  /** the settings of a serial line, told on the first opening */
  settings?: string;
  /** the event of a cable that is lost soon after opening; the usual one when left out */
  lostSoon?: EventCode;
  open: OpenCable<R>;
  identity?: () => string | null;
}

/**
 * A balance or a sensor behind any kind of cable. Opens it, gives every line and every change of the connection, and tries again
 * with growing pauses when it cannot be opened or is lost. Throws Refusal at once for a request it may not send.
 */
export function createCabledDevice<R>(options: CabledDeviceOptions<R>): Device<R> {
  const { name, clock = systemClock, ask, identity } = options;
  const records = createLineRecords<R>(clock);
  // A balance that is asked only while a capture waits is silent in between, and that is no fault.
  const patienceMs =
    ask?.when === "capture" ? Number.POSITIVE_INFINITY : (options.patienceMs ?? defaultPatienceMs);
  const listening = createListening<R>({
    clock,
    records,
    read: options.read,
    cutter: options.cutter,
    patienceMs,
    balance: nameMessage(name),
    asked: ask?.request,
  });
  const connection = new Connection<R>(options, { clock, records, listening });
  return {
    name,
    patienceMs,
    firstByteMs: () => listening.firstByteMs,
    onLine: records.onLine,
    start: () => connection.start(),
    stop: () => connection.stop(),
    ...(ask?.when === "capture" && { ask: () => connection.ask() }),
    ...(identity && { identity }),
  };
}

interface Heard<R> {
  clock: Clock;
  records: ReturnType<typeof createLineRecords<R>>;
  listening: ReturnType<typeof createListening<R>>;
}

/** One cable that is opened, lost and opened again for as long as it is wanted. */
class Connection<R> {
  readonly #options: CabledDeviceOptions<R>;
  readonly #heard: Heard<R>;
  readonly #request: ReturnType<typeof requestBytes> | null;
  readonly #pauses: typeof reopening;
  #cable: Cable | null = null;
  #wanted = false;
  #openedBefore = false;
  #openedMs = 0;
  #lastRefusal = "";
  #pauseMs: number;
  #callOffRetry = () => {};
  #callOffAsking = () => {};
  #turn = 0;
  #opening: Promise<void> = Promise.resolve();

  constructor(options: CabledDeviceOptions<R>, heard: Heard<R>) {
    this.#options = options;
    this.#heard = heard;
    this.#request = options.ask ? requestBytes(options.ask) : null;
    this.#pauses = options.pauses ?? reopening;
    this.#pauseMs = this.#pauses.firstMs;
  }

  start(): void {
    if (this.#wanted) return;
    this.#wanted = true;
    this.#opening = this.#open();
  }

  async stop(): Promise<void> {
    this.#wanted = false;
    this.#turn += 1;
    this.#callOffRetry();
    this.#callOffAsking();
    this.#heard.listening.closed();
    const before = this.#cable;
    this.#cable = null;
    await before?.close();
    // A cable that is just being opened is closed as soon as it stands, so that its port is free for the next.
    await this.#opening;
  }

  ask(): void {
    if (this.#request) this.#cable?.send(this.#request);
  }

  async #open(): Promise<void> {
    this.#turn += 1;
    const mine = this.#turn;
    const { listening } = this.#heard;
    let opened: Cable;
    let lostAlready = false;
    const current = () => mine === this.#turn && this.#wanted;
    try {
      opened = await this.#options.open({
        bytes: (chunk) => current() && listening.bytes(chunk),
        report: (bytes, meaning) => current() && listening.report(bytes, meaning),
        lost: () => {
          lostAlready = true;
          if (current() && this.#cable) this.#lost();
        },
      });
    } catch (error) {
      if (current()) this.#notOpened(error);
      return;
    }
    if (!current()) {
      await opened.close();
      return;
    }
    this.#cable = opened;
    this.#nowOpen();
    if (lostAlready) this.#lost();
  }

  #nowOpen(): void {
    const { name, settings, ask } = this.#options;
    const { clock, listening, records } = this.#heard;
    const balance = nameMessage(name);
    this.#pauseMs = this.#pauses.firstMs;
    this.#lastRefusal = "";
    this.#openedMs = clock.monotonicMs();
    listening.opened();
    if (this.#openedBefore) records.event(lineEvent("line.back", { balance }));
    else if (settings === undefined) records.event(lineEvent("line.open", { balance }));
    else records.event(lineEvent("line.open.serial", { balance, settings }));
    this.#openedBefore = true;
    if (ask?.when === "timer") this.#askAgain(ask.everyMs ?? usualAskingMs);
  }

  #askAgain(everyMs: number): void {
    this.ask();
    this.#callOffAsking = this.#heard.clock.after(everyMs, () => this.#askAgain(everyMs));
  }

  #notOpened(error: unknown): void {
    const refused = refusedEvent(this.#options.name, error);
    const event = JSON.stringify(refused.event);
    // The same refusal is told once, not at every try.
    if (event !== this.#lastRefusal) this.#heard.records.event(refused);
    this.#lastRefusal = event;
    this.#retry();
  }

  #lost(): void {
    const { clock, listening, records } = this.#heard;
    const { name, lostSoon } = this.#options;
    this.#turn += 1;
    this.#cable = null;
    this.#callOffAsking();
    listening.closed();
    const soon = clock.monotonicMs() - this.#openedMs < takenWithinMs ? lostSoon : undefined;
    records.event(lineEvent(soon ?? "line.lost", { balance: nameMessage(name) }));
    this.#retry();
  }

  #retry(): void {
    if (!this.#wanted) return;
    this.#callOffRetry = this.#heard.clock.after(this.#pauseMs, () => {
      this.#opening = this.#open();
    });
    this.#pauseMs = Math.min(this.#pauseMs * this.#pauses.growth, this.#pauses.longestMs);
  }
}

/** Why a cable was not opened, as an event. */
function refusedEvent(port: string, error: unknown): { event: BalanceEvent } {
  if (error instanceof Refusal && isEventCode(error.code)) return lineEvent(error.code, error.params);
  return lineEvent("line.refused.other", { port, reason: errorFacts(error).message });
}
