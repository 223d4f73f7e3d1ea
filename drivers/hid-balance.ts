import { closeSync, constants, openSync, readSync } from "node:fs";
import { Refusal } from "../calibration/refusal.ts";
import { balanceName } from "./balance-name.ts";
import type { OpenCable } from "./cable.ts";
import { type CableOptions, createCabledDevice } from "./cabled-device.ts";
import { type Clock, systemClock } from "./clock.ts";
import type { Balance } from "./device.ts";
import { type FoundScale, listScales } from "./hid/scales.ts";
import { errorFacts, portRefused } from "./port-error.ts";
import { lineEvent, type Reading } from "./reading.ts";

export interface HidBalanceOptions extends Omit<CableOptions, "read" | "ask"> {
  /** the raw device, such as /dev/hidraw0 */
  path: string;
  /** how scales are found; the system's by default */
  scales?: () => FoundScale[];
}

/** How often the raw device is looked at, ms. It is never waited for, so that it can be closed at any time. */
const lookEveryMs = 20;

/** A USB scale of the open HID usage tables, read through its raw device. */
export function createHidBalance(options: HidBalanceOptions): Balance {
  const { path, clock = systemClock, scales = listScales } = options;
  const found = () => scales().find((scale) => scale.path === path);
  return createCabledDevice<Reading>({
    read: () => () => null,
    ...options,
    name: balanceName.usb(path),
    identity: () => found()?.identity ?? null,
    open: async (ear) => {
      const scale = found();
      if (!scale) throw new Refusal("line.refused.missing-usb", { port: path });
      return openRaw(scale, clock)(ear);
    },
  });
}

function openRaw({ path, reports }: FoundScale, clock: Clock): OpenCable {
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
        ear.report(report, reports.read(report) ?? lineEvent("line.unknown-line.report", { bytes: taken }));
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
