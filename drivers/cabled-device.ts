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
  const { name, clock = systemClock, pauses = reopening, ask } = options;
  const request = ask ? requestBytes(ask) : null;
  const balance = nameMessage(name);
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
    balance,
    asked: ask?.request,
  });
  let cable: Cable | null = null;
  let wanted = false;
  let openedBefore = false;
  let openedMs = 0;
  let lastRefusal = "";
  let pauseMs = pauses.firstMs;
  let callOffRetry = () => {};
  let callOffAsking = () => {};
  let turn = 0;
  let opening: Promise<void> = Promise.resolve();

  function retry(): void {
    if (!wanted) return;
    callOffRetry = clock.after(pauseMs, () => {
      opening = open();
    });
    pauseMs = Math.min(pauseMs * pauses.growth, pauses.longestMs);
  }

  async function open(): Promise<void> {
    turn += 1;
    const mine = turn;
    let opened: Cable;
    let lostAlready = false;
    const current = () => mine === turn && wanted;
    try {
      opened = await options.open({
        bytes: (chunk) => current() && listening.bytes(chunk),
        report: (bytes, meaning) => current() && listening.report(bytes, meaning),
        lost() {
          lostAlready = true;
          if (current() && cable) lost();
        },
      });
    } catch (error) {
      if (current()) notOpened(error);
      return;
    }
    if (!current()) {
      await opened.close();
      return;
    }
    cable = opened;
    nowOpen();
    if (lostAlready) lost();
  }

  function nowOpen(): void {
    pauseMs = pauses.firstMs;
    lastRefusal = "";
    openedMs = clock.monotonicMs();
    listening.opened();
    const { settings } = options;
    if (openedBefore) records.event(lineEvent("line.back", { balance }));
    else if (settings === undefined) records.event(lineEvent("line.open", { balance }));
    else records.event(lineEvent("line.open.serial", { balance, settings }));
    openedBefore = true;
    if (ask?.when === "timer") askAgain();
  }

  function askAgain(): void {
    send();
    callOffAsking = clock.after(ask?.everyMs ?? usualAskingMs, askAgain);
  }

  function send(): void {
    if (request) cable?.send(request);
  }

  function notOpened(error: unknown): void {
    const refused = refusedEvent(name, error);
    const told = JSON.stringify(refused.event);
    // The same refusal is told once, not at every try.
    if (told !== lastRefusal) records.event(refused);
    lastRefusal = told;
    retry();
  }

  function lost(): void {
    turn += 1;
    cable = null;
    callOffAsking();
    listening.closed();
    const soon = clock.monotonicMs() - openedMs < takenWithinMs ? options.lostSoon : undefined;
    records.event(lineEvent(soon ?? "line.lost", { balance }));
    retry();
  }

  return {
    name,
    patienceMs,
    firstByteMs: () => listening.firstByteMs,
    onLine: records.onLine,
    start() {
      if (wanted) return;
      wanted = true;
      opening = open();
    },
    async stop() {
      wanted = false;
      turn += 1;
      callOffRetry();
      callOffAsking();
      listening.closed();
      const before = cable;
      cable = null;
      await before?.close();
      // A cable that is just being opened is closed as soon as it stands, so that its port is free for the next.
      await opening;
    },
    ...(ask?.when === "capture" && { ask: send }),
    ...(options.identity && { identity: options.identity }),
  };
}

/** Why a cable was not opened, as an event. */
function refusedEvent(port: string, error: unknown): { event: BalanceEvent } {
  if (error instanceof Refusal && isEventCode(error.code)) return lineEvent(error.code, error.params);
  return lineEvent("line.refused.other", { port, reason: errorFacts(error).message });
}
