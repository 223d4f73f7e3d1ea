import { type PortRoots, systemRoots } from "../ports.ts";
import { listRawDevices, type RawDevice } from "./raw-devices.ts";
import { type ScaleReports, scaleReports } from "./scale-report.ts";

/** A scale of the open USB tables that is plugged in. */
export interface FoundScale extends Pick<RawDevice, "path" | "identity"> {
  reports: ScaleReports;
}

/** The USB scales of this machine, found by their report descriptors; nothing is opened and nothing is sent. */
export function listScales(roots: PortRoots = systemRoots): FoundScale[] {
  return listRawDevices(roots).flatMap(({ path, identity, descriptor }) => {
    try {
      const reports = scaleReports(descriptor);
      return reports ? [{ path, identity, reports }] : [];
    } catch {
      // A descriptor that breaks off: not a scale that can be read.
      return [];
    }
  });
}
