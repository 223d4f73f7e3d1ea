import { realpathSync } from "node:fs";
import { Refusal } from "../../calibration/refusal.ts";
import { type PortRoots, systemRoots } from "../ports.ts";
import { listFileSensors } from "./file-sensors.ts";
import type { FoundSensor } from "./found-sensor.ts";
import { listHidSensors } from "./hid-sensors.ts";

/** The sensors that the kernel shows as files, and raw USB sensors; nothing is opened and nothing is sent. */
export function listPluggedSensors(roots: PortRoots = systemRoots): FoundSensor[] {
  return [...listFileSensors(roots), ...listHidSensors(roots)];
}

/** True for the address of such a sensor, as it is kept or as a path of today. */
export function isPluggedSensor(address: string): boolean {
  return /^(iio|hid):/.test(address) || /^\/.*\/(hidraw\d+|iio:device\d+(\/in_\w+)?)$/.test(address);
}

/**
 * The sensor of an address or of a path of today. Throws Refusal when there is none, and where several cannot be told
 * apart.
 */
export function pluggedSensor(address: string, roots: PortRoots = systemRoots): FoundSensor {
  const all = listPluggedSensors(roots);
  const place = realPath(address);
  const named = all.filter((one) => one.address === address || realPath(one.path) === place);
  const [found, ...more] = all.filter(({ address: one }) => one === named[0]?.address);
  if (!found || more.length > 0 || named.length > 1)
    throw new Refusal("line.refused.missing-sensor", { port: address }, "address");
  return found;
}

/** Where a path leads to, so that one place under two names is one; other text as it is. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}
