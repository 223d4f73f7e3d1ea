import { Refusal } from "../calibration/refusal.ts";
import { balanceName } from "./balance-name.ts";
import { type CableOptions, createCabledDevice } from "./cabled-device.ts";
import { systemClock } from "./clock.ts";
import type { Balance } from "./device.ts";
import { rawReports } from "./hid/raw-reports.ts";
import { type FoundScale, listScales } from "./hid/scales.ts";
import type { Reading } from "./reading.ts";

export interface HidBalanceOptions extends Omit<CableOptions, "read" | "ask"> {
  /** the raw device, such as /dev/hidraw0 */
  path: string;
  /** how scales are found; the system's by default */
  scales?: () => FoundScale[];
}

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
      return rawReports(path, scale.reports.read, clock)(ear);
    },
  });
}
