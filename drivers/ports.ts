import { readdirSync, realpathSync } from "node:fs";
import { basename, join } from "node:path";
import { usbIdentity } from "./usb-identity.ts";

/** A port a balance may hang on. */
export interface FoundPort {
  /** the name to remember: stable over unplugging and restarts where there is such a name */
  path: string;
  /** the device it leads to now, such as /dev/ttyUSB0 */
  device: string;
  /** what makes the name stable: the device itself, the socket it is plugged into, or nothing */
  stableBy: "device" | "socket" | "nothing";
  /** what sits there, when it can be known */
  identity: string | null;
}

export interface PortRoots {
  dev: string;
  sys: string;
}

export const systemRoots: PortRoots = { dev: "/dev", sys: "/sys" };

/** Kinds of serial devices: adapters on USB, balances with USB of their own, ports of the board. */
const serialDevice = /^tty(USB|ACM|S|AMA)\d+$/;

/**
 * The ports of this machine, stable names first. Reads the links that the system keeps under /dev/serial; runs no
 * other program. A device whose by-id name is missing because another device took it is listed by its socket.
 */
export function listPorts(roots: PortRoots = systemRoots): FoundPort[] {
  const byId = links(join(roots.dev, "serial/by-id"));
  const byPath = links(join(roots.dev, "serial/by-path"));
  const devices = names(join(roots.sys, "class/tty")).filter(
    (name) => serialDevice.test(name) && real(roots, name),
  );
  const identities = new Map(devices.map((name) => [name, usbIdentity(join(roots.dev, name), roots)]));
  const isDoubled = (name: string) =>
    identities.get(name) !== null &&
    [...identities].some(([other, identity]) => other !== name && identity === identities.get(name));
  const ports = devices.map((name): FoundPort => {
    const device = join(roots.dev, name);
    const identity = identities.get(name) ?? null;
    const idName = byId.get(name);
    const pathName = byPath.get(name);
    if (idName && !isDoubled(name)) return { path: idName, device, stableBy: "device", identity };
    if (pathName) return { path: pathName, device, stableBy: "socket", identity };
    return { path: device, device, stableBy: "nothing", identity };
  });
  const order = ["device", "socket", "nothing"];
  return ports.sort(
    (a, b) => order.indexOf(a.stableBy) - order.indexOf(b.stableBy) || a.path.localeCompare(b.path),
  );
}

/** The port of any of its names; undefined when it is not in the list. */
export function portNamed(path: string, roots: PortRoots = systemRoots): FoundPort | undefined {
  const device = realName(path);
  return device === null ? undefined : listPorts(roots).find((port) => basename(port.device) === device);
}

/** The stable name of a port given by any name, or null when there is none. */
export function stableName(path: string, roots: PortRoots = systemRoots): string | null {
  const found = portNamed(path, roots);
  return found && found.stableBy !== "nothing" ? found.path : null;
}

/** Links of a folder by the name of the device they lead to. */
function links(folder: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const name of names(folder)) {
    const path = join(folder, name);
    const device = realName(path);
    if (device !== null) found.set(device, path);
  }
  return found;
}

/** Ports of the board that are only reserved names have no driver behind them. */
function real({ sys }: PortRoots, name: string): boolean {
  return !name.startsWith("ttyS") || names(join(sys, "class/tty", name, "device/driver")).length > 0;
}

function names(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}

function realName(path: string): string | null {
  try {
    return basename(realpathSync(path));
  } catch {
    return null;
  }
}
