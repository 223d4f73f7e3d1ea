import { existsSync, statSync } from "node:fs";
import type { SerialPort } from "serialport";
import { balanceName } from "./balance-name.ts";
import type { CableEar, OpenCable } from "./cable.ts";
import { type CabledDeviceOptions, type CableOptions, createCabledDevice } from "./cabled-device.ts";
import { type Clock, systemClock } from "./clock.ts";
import type { Balance, Device } from "./device.ts";
import { type LineSettings, parseLineSettings } from "./line-settings.ts";
import { carryingParity, checkingParity } from "./parity.ts";
import { checkParity } from "./parity-check.ts";
import { portRefused } from "./port-error.ts";
import { stableName } from "./ports.ts";
import type { Reading } from "./reading.ts";
import { readAnyShape } from "./shapes/index.ts";
import { usbIdentity } from "./usb-identity.ts";

export interface SerialDeviceOptions<R> extends CableOptions<R> {
  /** what it is called in events; a balance on its port when left out */
  name?: string;
  /** the port, a stable name under /dev/serial/by-id where there is one */
  path: string;
  /** "9600-8n1" */
  line?: string;
  /** how often it is checked that the open port still is the one under its name, ms */
  presenceMs?: number;
  /** the stable name of a port, and what sits behind it; by default what the system says */
  names?: { stable(path: string): string | null; identity(path: string): string | null };
}

const systemNames = {
  stable: (path: string) => stableName(path),
  identity: (path: string) => usbIdentity(path),
};

export type SerialBalanceOptions = SerialDeviceOptions<Reading>;

/** A balance on a serial port; its lines are read by any line format unless told otherwise. */
export function createSerialBalance(options: SerialBalanceOptions): Balance {
  return createSerialDevice({ read: () => readAnyShape(), ...options });
}

/**
 * A device on a serial port. Throws Refusal at once when the line settings are wrong; every other error is
 * an event and the port is tried again.
 */
export function createSerialDevice<R>(
  options: SerialDeviceOptions<R> & Pick<CabledDeviceOptions<R>, "read">,
): Device<R> {
  const { path, line = "9600-8n1", clock = systemClock, names = systemNames } = options;
  const settings = parseLineSettings(line);
  // A port such as /dev/ttyUSB0 may come back under another number, and another device under this one. Once its stable
  // name is known, only that is opened again.
  let name = path;
  return createCabledDevice<R>({
    ...options,
    name: options.name ?? balanceName.serial(path),
    settings: line,
    // programs such as brltty and ModemManager take a port right after it was opened
    lostSoon: "line.lost.serial-soon",
    identity: () => names.identity(name),
    open: (ear: CableEar<R>) => {
      if (existsSync(name)) name = names.stable(name) ?? name;
      return openSerialCable<R>(name, settings, clock, options.presenceMs)(ear);
    },
  });
}

/**
 * Not every unplugging closes the port: a cable pulled while a read was under way leaves a port that reads nothing for
 * ever. So the device under the name is compared with the one that was opened, ms.
 */
const usualPresenceMs = 250;

/** Opens a serial port as a cable. The port is locked, so that no other program reads half of the characters. */
export function openSerialCable<R = Reading>(
  path: string,
  line: LineSettings,
  clock: Clock,
  presenceMs = usualPresenceMs,
): OpenCable<R> {
  return async (ear) => {
    const own = line.dataBits === 7 && line.parity !== "none" ? line.parity : null;
    const checked = own ? checkingParity(own) : (bytes: Uint8Array) => bytes;
    // loaded with the first port that is opened: a scale that is read off needs none of it
    const { SerialPort } = await import("serialport");
    const port = new SerialPort({ path, autoOpen: false, lock: true, ...portSettings(line) });
    const watch = watching(port, path, { clock, presenceMs, lost: () => ear.lost() });
    port.on("data", (chunk: Buffer) => ear.bytes(checked(chunk)));
    await new Promise<void>((opened, refused) =>
      port.open((error) => (error ? refused(portRefused(path, { message: error.message })) : opened())),
    );
    if (!own && line.parity !== "none" && hasDescriptor(port.port)) await checkParity(port.port.fd);
    watch.begin();
    return {
      send: (bytes) => port.write(Buffer.from(own ? carryingParity(bytes, own) : bytes)),
      close() {
        watch.end();
        return new Promise((closed) => (port.isOpen ? port.close(() => closed()) : closed()));
      },
    };
  };
}

/** Tells once when a port closes by itself, or when another device stands under its name. */
function watching(
  port: SerialPort,
  path: string,
  { clock, presenceMs, lost }: { clock: Clock; presenceMs: number; lost(): void },
) {
  let callOffPresence = () => {};
  let over = false;
  let device: string | null = null;
  function gone(): void {
    callOffPresence();
    if (!over) lost();
    over = true;
  }
  function announce(): void {
    if (over) return;
    if (deviceUnder(path) === device) callOffPresence = clock.after(presenceMs, announce);
    else if (port.isOpen) port.close();
  }
  port.on("close", gone);
  port.on("error", gone);
  return {
    begin() {
      device = deviceUnder(path);
      announce();
    },
    end() {
      over = true;
      callOffPresence();
    },
  };
}

const hasDescriptor = (port: unknown): port is { fd: number } =>
  typeof port === "object" && port !== null && "fd" in port && typeof port.fd === "number";

/** Which device a name leads to; every plugging in makes a new one, even under the same name. */
function deviceUnder(path: string): string | null {
  const found = statSync(path, { throwIfNoEntry: false });
  return found ? `${found.dev}/${found.ino}/${found.rdev}` : null;
}

/**
 * Seven bits with parity take as long as eight without and are received as such, so that their parity can be checked here:
 * the driver's own check is lost where it is told to ignore errors.
 */
function portSettings({ baudRate, dataBits, parity, stopBits, flowControl }: LineSettings) {
  const ownParity = dataBits === 7 && parity !== "none";
  return {
    baudRate,
    dataBits: ownParity ? (8 as const) : dataBits,
    parity: ownParity ? ("none" as const) : parity,
    stopBits,
    rtscts: flowControl === "rts-cts",
    xon: flowControl === "xon-xoff",
    xoff: flowControl === "xon-xoff",
  };
}
