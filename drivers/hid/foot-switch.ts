import { closeSync, constants, openSync, readSync } from "node:fs";
import { Refusal } from "../../calibration/refusal.ts";
import { type Clock, systemClock } from "../clock.ts";

/** A switch of the USB HID classes on its raw device: tells each press, and is looked for again when it is gone. */
export interface FootSwitch {
  start(): void;
  stop(): void;
}

const lookEveryMs = 20;
const reopenMs = 1000;

/**
 * A press is a report in which a bit is set that the report before had not; what is held while it is opened is none.
 * Throws Refusal for an address that is no raw device.
 */
export function footSwitchAt(path: string, pressed: () => void, clock: Clock = systemClock): FootSwitch {
  if (!path.startsWith("/")) throw new Refusal("port.address", { address: path }, "switch");
  const buffer = new Uint8Array(64);
  let descriptor: number | undefined;
  let callOff = () => {};
  let before: Uint8Array | undefined;

  function open(): void {
    try {
      descriptor = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
      before = undefined;
      look();
    } catch {
      callOff = clock.after(reopenMs, open);
    }
  }
  function close(): void {
    callOff();
    if (descriptor !== undefined) closeSync(descriptor);
    descriptor = undefined;
  }
  function look(): void {
    for (let taken = take(); taken > 0; taken = take()) hear(buffer.subarray(0, taken));
    if (descriptor !== undefined) callOff = clock.after(lookEveryMs, look);
  }
  function hear(report: Uint8Array): void {
    const last = before;
    if (last && report.some((byte, place) => (byte & ~(last[place] ?? 0)) !== 0)) pressed();
    before = Uint8Array.from(report);
  }
  /** bytes taken; 0 when there is nothing */
  function take(): number {
    if (descriptor === undefined) return 0;
    try {
      return readSync(descriptor, buffer);
    } catch (error) {
      const gone = !(error instanceof Error && "code" in error && error.code === "EAGAIN");
      if (gone) {
        close();
        callOff = clock.after(reopenMs, open);
      }
      return 0;
    }
  }
  return { start: open, stop: close };
}
