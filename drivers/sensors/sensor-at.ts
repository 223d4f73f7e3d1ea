import { type AskedLines, requestBytes } from "../asked-lines.ts";
import { balanceName } from "../balance-name.ts";
import { createCabledDevice } from "../cabled-device.ts";
import { type Clock, systemClock } from "../clock.ts";
import type { Device } from "../device.ts";
import { createNetworkDevice, parseNetworkAddress } from "../network-balance.ts";
import type { Comma } from "../number.ts";
import type { PortRoots } from "../ports.ts";
import type { BytesReader } from "../reading.ts";
import { createSerialDevice } from "../serial-balance.ts";
import { filesPatienceMs } from "./file-sensors.ts";
import { readPlainLines } from "./plain-lines.ts";
import { isPluggedSensor, pluggedSensor } from "./plugged-sensors.ts";
import type { SensorReading } from "./quantity.ts";
import { readBySensorProfile, type SensorProfile } from "./sensor-profile.ts";

/** What an owner has told about a sensor; all but its address may be left out. */
export interface SensorSettings {
  /** a serial port, host:port, tcp://host:port, or a sensor that is plugged in as `listPluggedSensors` gives it */
  address: string;
  /** "9600-8n1", for a serial line */
  line?: string | undefined;
  comma?: Comma | undefined;
  /** learned lines, in place of lines that name each unit */
  profile?: SensorProfile | undefined;
  ask?: AskedLines | undefined;
  clock?: Clock | undefined;
  /** where the system shows its devices */
  roots?: PortRoots | undefined;
}

/** A sensor of one room or bath, and a device that reads it. */
export type SensorDevice = Device<SensorReading>;

/** A slow sensor sends every ten seconds, ms; after three such gaps it is silent. */
export const sensorPatienceMs = 30_000;

/** A sensor by its address. Throws Refusal for an address, line setting or request that cannot be right. */
export function sensorAt(settings: SensorSettings): SensorDevice {
  const { address, line, comma, profile, ask, clock } = settings;
  if (isPluggedSensor(address)) return pluggedDevice(settings);
  const read = (): BytesReader<SensorReading> =>
    profile ? readBySensorProfile(profile) : readPlainLines(comma);
  if (ask) requestBytes(ask);
  const parts = {
    name: balanceName.sensor(address),
    read,
    patienceMs: sensorPatienceMs,
    ...(ask && { ask }),
    ...(clock && { clock }),
  };
  return /^tcp:\/\//.test(address) || (!address.startsWith("/") && /:\d+$/.test(address))
    ? createNetworkDevice<SensorReading>({ ...parseNetworkAddress(address), ...parts })
    : createSerialDevice<SensorReading>({ path: address, ...(line !== undefined && { line }), ...parts });
}

/** A sensor that is looked for at each opening, wherever the system shows it then. */
function pluggedDevice({ address, roots, clock = systemClock }: SensorSettings): SensorDevice {
  return createCabledDevice<SensorReading>({
    name: balanceName.sensor(address),
    read: () => () => null,
    patienceMs: address.startsWith("iio:") ? filesPatienceMs : sensorPatienceMs,
    clock,
    open: async (ear) => pluggedSensor(address, roots).open(clock)(ear),
  });
}
