import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type PortRoots, systemRoots } from "../ports.ts";

/** A raw USB HID device that is plugged in. */
export interface RawDevice {
  /** such as /dev/hidraw0; another one after it was plugged in anew */
  path: string;
  /** the system's folder of the device */
  folder: string;
  /** what the system calls it, with vendor, product and serial number: "Name (1a2b:0003) #A113" */
  identity: string;
  /** whether a serial number tells it from others of its kind */
  hasSerial: boolean;
  /** the socket it is plugged into, as the system names it; empty where it says none */
  socket: string;
  descriptor: Uint8Array;
}

/** The raw USB HID devices of this machine; nothing is opened and nothing is sent. */
export function listRawDevices(roots: PortRoots = systemRoots): RawDevice[] {
  const folder = join(roots.sys, "class/hidraw");
  return folderNames(folder).flatMap((name) => {
    try {
      return [rawDevice(join(roots.dev, name), join(folder, name, "device"))];
    } catch {
      // Unplugged while we looked.
      return [];
    }
  });
}

function rawDevice(path: string, folder: string): RawDevice {
  const descriptor = readFileSync(join(folder, "report_descriptor"));
  const facts = readFileSync(join(folder, "uevent"), "utf8");
  const fact = (key: string) => new RegExp(`^${key}=(.+)$`, "m").exec(facts)?.[1];
  const [, vendor, product] = /^\w+:0*(\w{4}):0*(\w{4})$/.exec(fact("HID_ID") ?? "") ?? [];
  const serial = fact("HID_UNIQ");
  const called = fact("HID_NAME") ?? path;
  const identity = `${called}${vendor ? ` (${vendor}:${product})` : ""}${serial ? ` #${serial}` : ""}`;
  return { path, folder, identity, hasSerial: Boolean(serial), socket: fact("HID_PHYS") ?? "", descriptor };
}

/** Names in a folder of the system, sorted; none where there is no such folder. */
export function folderNames(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}
