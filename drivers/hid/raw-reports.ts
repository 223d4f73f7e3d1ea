import { closeSync, constants, openSync, readSync } from "node:fs";
import { Refusal } from "../../calibration/refusal.ts";
import type { OpenCable } from "../cable.ts";
import type { Clock } from "../clock.ts";
import { errorFacts, portRefused } from "../port-error.ts";
import { type LineMeaning, lineEvent } from "../reading.ts";

/** How often the raw device is looked at, ms. It is never waited for, so that it can be closed at any time. */
const lookEveryMs = 20;

/** The raw device of a USB device, from which each whole input report is read as `read` says; nothing is sent to it. */
export function rawReports<R>(
  path: string,
  read: (report: Uint8Array) => LineMeaning<R>,
  clock: Clock,
): OpenCable<R> {
  return async (ear) => {
    const descriptor = open(path);
    const buffer = new Uint8Array(256);
    let callOff = () => {};
    let closed = false;
    function close(): void {
      callOff();
      if (!closed) closeSync(descriptor);
      closed = true;
    }
    function look(): void {
      for (let taken = take(); taken !== null; taken = take()) {
        if (taken === 0) {
          close();
          ear.lost();
          return;
        }
        const report = buffer.slice(0, taken);
        ear.report(report, read(report) ?? lineEvent("line.unknown-line.report", { bytes: taken }));
      }
      callOff = clock.after(lookEveryMs, look);
    }
    /** bytes taken; null when there is nothing yet; 0 when the device is gone */
    function take(): number | null {
      try {
        return readSync(descriptor, buffer);
      } catch (error) {
        return errorFacts(error).code === "EAGAIN" ? null : 0;
      }
    }
    look();
    return {
      send() {},
      async close() {
        close();
      },
    };
  };
}

function open(path: string): number {
  try {
    return openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  } catch (error) {
    const facts = errorFacts(error);
    if (facts.code === "EACCES" || facts.code === "EPERM")
      throw new Refusal("line.refused.permission-usb", { port: path });
    throw portRefused(path, facts);
  }
}
