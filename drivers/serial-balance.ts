import { SerialPort } from "serialport";
import type { Balance } from "./balance.ts";
import { type Clock, systemClock } from "./clock.ts";
import { type LineSettings, parseLineSettings } from "./line-settings.ts";
import { createListening, defaultPatienceMs } from "./listening.ts";
import { portTroubleInWords } from "./port-trouble.ts";
import type { LineReader } from "./reading.ts";
import { readAnyShape } from "./shapes/index.ts";
import { createTold } from "./told.ts";

/** Pauses before a lost port is tried again, ms: growing, but back within two seconds of its return. */
export const reopening = { firstMs: 250, growth: 1.5, longestMs: 1500 };

export interface SerialBalanceOptions {
  /** the port, a stable name under /dev/serial/by-id where there is one */
  path: string;
  /** "9600-8n1" */
  line?: string;
  /** gives a fresh reader for every opening of the port */
  read?: () => LineReader;
  /** silence of a balance that sends by itself, ms, before it is told; Infinity for one that sends on a key */
  patienceMs?: number;
  pauses?: typeof reopening;
  clock?: Clock;
}

/**
 * A balance on a serial port. Opens it, tells every line and every change of the connection, and tries again with
 * growing pauses when the port is missing, busy or lost. Throws RangeError at once when the line settings are wrong.
 */
export function createSerialBalance(options: SerialBalanceOptions): Balance {
  const { path, clock = systemClock, pauses = reopening } = options;
  const line = parseLineSettings(options.line ?? "9600-8n1");
  const told = createTold(clock);
  const name = `balance on ${path}`;
  const listening = createListening({
    clock,
    told,
    read: options.read ?? (() => readAnyShape()),
    patienceMs: options.patienceMs ?? defaultPatienceMs,
    name: `The ${name}`,
  });
  let port: SerialPort | null = null;
  let wanted = false;
  let openedBefore = false;
  let lastTrouble = "";
  let pauseMs = pauses.firstMs;
  let callOffRetry = () => {};

  function retry(): void {
    if (!wanted) return;
    callOffRetry = clock.after(pauseMs, open);
    pauseMs = Math.min(pauseMs * pauses.growth, pauses.longestMs);
  }

  function open(): void {
    const opening = new SerialPort({ path, autoOpen: false, ...portSettings(line) });
    port = opening;
    opening.on("data", (chunk: Buffer) => listening.bytes(chunk));
    opening.on("close", () => lost(opening));
    opening.on("error", () => lost(opening));
    opening.open((error) => {
      if (error) {
        notOpened(error);
        return;
      }
      if (!wanted) {
        opening.close();
        return;
      }
      pauseMs = pauses.firstMs;
      lastTrouble = "";
      listening.opened();
      if (openedBefore) told.event("back", `The ${name} is back. Check its zero before weighing on.`);
      else told.event("open", `Listening to the ${name} at ${options.line ?? "9600-8n1"}.`);
      openedBefore = true;
    });
  }

  function notOpened(error: Error): void {
    port = null;
    const says = portTroubleInWords(path, { message: error.message });
    // The same trouble is told once, not at every try.
    if (says !== lastTrouble && wanted) told.event("refused", says);
    lastTrouble = says;
    retry();
  }

  function lost(closed: SerialPort): void {
    if (port !== closed) return;
    port = null;
    listening.closed();
    if (!wanted) return;
    told.event(
      "lost",
      `The ${name} is gone. Nothing is taken until it is back; it is tried again by itself.`,
    );
    retry();
  }

  return {
    name,
    start() {
      wanted = true;
      open();
    },
    async stop() {
      wanted = false;
      callOffRetry();
      listening.closed();
      const open = port;
      port = null;
      if (open?.isOpen) await new Promise<void>((closed) => open.close(() => closed()));
    },
    onLine: told.onLine,
  };
}

function portSettings({ baudRate, dataBits, parity, stopBits, flowControl }: LineSettings) {
  return {
    baudRate,
    dataBits,
    parity,
    stopBits,
    rtscts: flowControl === "rts-cts",
    xon: flowControl === "xon-xoff",
    xoff: flowControl === "xon-xoff",
  };
}
