import { join } from "node:path";
import { folderNames, listRawDevices, type RawDevice } from "../hid/raw-devices.ts";
import { rawReports } from "../hid/raw-reports.ts";
import { type SensorReports, sensorReports } from "../hid/sensor-report.ts";
import { type PortRoots, systemRoots } from "../ports.ts";
import type { FoundSensor } from "./found-sensor.ts";

/** The raw USB sensors of the open HID usage tables that the kernel does not show as files already. */
export function listHidSensors(roots: PortRoots = systemRoots): FoundSensor[] {
  return listRawDevices(roots)
    .filter((device) => !shownAsFiles(device))
    .flatMap((device) => {
      const all = reportsOf(device);
      const { identity, hasSerial, socket, path } = device;
      const called = `hid:${identity}${hasSerial || socket === "" ? "" : ` at ${socket}`}`;
      return all.map(({ reportId, quantities, read }) => ({
        address: all.length === 1 ? called : `${called} report ${reportId}`,
        path,
        quantities,
        open: (clock) => rawReports(path, read, clock),
      }));
    });
}

function reportsOf({ descriptor }: RawDevice): SensorReports[] {
  try {
    return sensorReports(descriptor);
  } catch {
    // A descriptor that breaks off: not a sensor that can be read.
    return [];
  }
}

/** A sensor that the kernel took over has a folder of files below its own. */
function shownAsFiles({ folder }: RawDevice): boolean {
  return folderNames(folder)
    .filter((name) => name.startsWith("HID-SENSOR-"))
    .some((name) => folderNames(join(folder, name)).some((file) => file.startsWith("iio:device")));
}
