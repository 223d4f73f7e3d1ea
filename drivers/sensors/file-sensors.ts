import { realpathSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { OpenCable } from "../cable.ts";
import type { Clock } from "../clock.ts";
import { folderNames } from "../hid/raw-devices.ts";
import { errorFacts } from "../port-error.ts";
import type { PortRoots } from "../ports.ts";
import { type LineMeaning, lineEvent } from "../reading.ts";
import { fileLine, usbAbove } from "../usb-identity.ts";
import { type Channel, channelsOf, channelValue } from "./file-values.ts";
import type { FoundSensor } from "./found-sensor.ts";
import type { SensedValue, SensorReading } from "./quantity.ts";

const readEveryMs = 1000;

/** The kernel waits up to five seconds for a sensor that answers slowly [from memory]; after that it is silent, ms. */
export const filesPatienceMs = 8000;

/** The sensors that the kernel shows as files, a channel each where one quantity is there more than once. */
export function listFileSensors({ sys }: PortRoots): FoundSensor[] {
  const devices = join(sys, "bus/iio/devices");
  return folderNames(devices)
    .filter((name) => /^iio:device\d+$/.test(name))
    .flatMap((name) => {
      const folder = join(devices, name);
      const channels = channelsOf(folderNames(folder));
      const quantities = channels.map(({ quantity }) => quantity);
      const called = `iio:${nameOf(folder) ?? name}`;
      const sensor = (address: string, path: string, mine: readonly Channel[]): FoundSensor => ({
        address,
        path,
        quantities: mine.map(({ quantity }) => quantity),
        open: (clock) => readFiles(folder, mine, clock),
      });
      if (channels.length === 0) return [];
      return new Set(quantities).size === quantities.length
        ? [sensor(called, folder, channels)]
        : channels.map((one) => sensor(`${called} ${one.name}`, join(folder, one.name), [one]));
    });
}

/** Its name with what tells it from others of its kind: serial number or socket on USB, else the place on its bus. */
function nameOf(folder: string): string | undefined {
  try {
    const place = dirname(realpathSync(folder));
    const name = fileLine(join(folder, "name")) ?? "sensor";
    const usb = usbAbove(place);
    if (!usb) return `${name} at ${basename(place)}`;
    return `${name} (${usb.vendor}:${usb.product}) ${usb.serial === null ? `at ${usb.socket}` : `#${usb.serial}`}`;
  } catch {
    return undefined;
  }
}

/** Reads the files of a sensor once a second, one reading after the other; what they held is the raw line. */
function readFiles(folder: string, channels: readonly Channel[], clock: Clock): OpenCable<SensorReading> {
  const files = [...new Set(channels.flatMap((one) => Object.values(one.files)))];
  return async (ear) => {
    let callOff = () => {};
    let closed = false;
    async function look(): Promise<void> {
      const texts = new Map<string, string>();
      // one after the other: a device that hangs holds up no more than one reading of a file
      for (const file of files) {
        const { text, gone } = await held(join(folder, file));
        if (closed) return;
        if (gone) {
          ear.lost();
          return;
        }
        texts.set(file, text);
      }
      const raw = [...texts].map(([file, text]) => `${file}=${text}`).join(" ");
      ear.report(new TextEncoder().encode(raw), meaningOf(channels, texts, raw));
      callOff = clock.after(readEveryMs, () => void look());
    }
    void look();
    return {
      send() {},
      async close() {
        closed = true;
        callOff();
      },
    };
  };
}

function meaningOf(
  channels: readonly Channel[],
  texts: ReadonlyMap<string, string>,
  raw: string,
): NonNullable<LineMeaning<SensorReading>> {
  const values: SensedValue[] = [];
  for (const channel of channels) {
    const value = channelValue(channel, texts);
    if (!value) return lineEvent("line.error.sensor-files", { files: raw });
    values.push(value);
  }
  return { reading: { values } };
}

/** What a file holds; the system's code where it gives nothing at this moment. */
async function held(path: string): Promise<{ text: string; gone: boolean }> {
  try {
    return { text: (await readFile(path, "utf8")).trim(), gone: false };
  } catch (error) {
    const { code = "" } = errorFacts(error);
    return { text: code, gone: code === "ENOENT" || code === "ENODEV" || code === "ENXIO" };
  }
}
