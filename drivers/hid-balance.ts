import { closeSync, constants, openSync, readSync } from "node:fs";
import type { Balance } from "./balance.ts";
import type { OpenCable } from "./cable.ts";
import { type CableOptions, createCabledBalance } from "./cabled-balance.ts";
import { type Clock, systemClock } from "./clock.ts";
import { type FoundScale, listScales } from "./hid/scales.ts";
import { portTroubleInWords } from "./port-trouble.ts";
import { unknownLine } from "./shapes/index.ts";

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
  return createCabledBalance({
    ...options,
    name: `USB scale on ${path}`,
    openSays: `Listening to the USB scale on ${path}.`,
    identity: () => found()?.identity ?? null,
    open: async (ear) => {
      const scale = found();
      if (!scale)
        throw new Error(
          `There is no USB scale on ${path}. Plug it in and switch it on; it is tried again by itself.`,
        );
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
        ear.report(report, reports.read(report) ?? unknownLine(`report of ${taken} bytes`));
      }
      callOff = clock.after(lookEveryMs, look);
    }
    /** bytes taken; null when there is nothing yet; 0 when the device is gone */
    function take(): number | null {
      try {
        return readSync(descriptor, buffer);
      } catch (error) {
        return (error as NodeJS.ErrnoException).code === "EAGAIN" ? null : 0;
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
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === "EACCES" || code === "EPERM")
      throw new Error(
        `No permission to open ${path}: raw USB devices belong to root. Put the line SUBSYSTEM=="hidraw", GROUP="dialout", MODE="0660" ` +
          "into /etc/udev/rules.d/60-scale.rules, run: sudo usermod -aG dialout $USER, then plug the scale in again and log in anew.",
      );
    throw new Error(portTroubleInWords(path, { code, message }));
  }
}
