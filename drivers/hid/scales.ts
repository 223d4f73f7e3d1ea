import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type PortRoots, systemRoots } from "../ports.ts";
import { type ScaleReports, scaleReports } from "./scale-report.ts";

/** A scale of the open USB tables that is plugged in. */
export interface FoundScale {
  /** its raw device, such as /dev/hidraw0 */
  path: string;
  /** what the system calls it, with vendor, product and serial number: "Name (1a2b:0003) #A113" */
  identity: string;
  reports: ScaleReports;
}

/** The USB scales of this machine, found by their report descriptors; nothing is opened and nothing is sent. */
export function listScales(roots: PortRoots = systemRoots): FoundScale[] {
  const folder = join(roots.sys, "class/hidraw");
  return names(folder).flatMap((name) => {
    try {
      const device = join(folder, name, "device");
      const reports = scaleReports(readFileSync(join(device, "report_descriptor")));
      return reports ? [{ path: join(roots.dev, name), identity: identity(device, name), reports }] : [];
    } catch {
      // Unplugged while we looked, or a descriptor that breaks off: not a scale that can be read.
      return [];
    }
  });
}

function identity(device: string, name: string): string {
  const facts = readFileSync(join(device, "uevent"), "utf8");
  const fact = (key: string) => new RegExp(`^${key}=(.+)$`, "m").exec(facts)?.[1];
  const [, vendor, product] = /^\w+:0*(\w{4}):0*(\w{4})$/.exec(fact("HID_ID") ?? "") ?? [];
  const serial = fact("HID_UNIQ");
  const called = fact("HID_NAME") ?? name;
  return `${called}${vendor ? ` (${vendor}:${product})` : ""}${serial ? ` #${serial}` : ""}`;
}

function names(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}
