import { type AskedLines, requestBytes } from "../asked-lines.ts";
import { balanceName } from "../balance-name.ts";
import type { Clock } from "../clock.ts";
import type { Device } from "../device.ts";
import { createNetworkDevice, parseNetworkAddress } from "../network-balance.ts";
import type { Comma } from "../number.ts";
import type { BytesReader } from "../reading.ts";
import { createSerialDevice } from "../serial-balance.ts";
import { readPlainLines } from "./plain-lines.ts";
import type { SensorReading } from "./quantity.ts";
import { readBySensorProfile, type SensorProfile } from "./sensor-profile.ts";

/** What an owner has told about a sensor; all but its address may be left out. */
export interface SensorSettings {
  /** a serial port, host:port or tcp://host:port */
  address: string;
  /** "9600-8n1", for a serial line */
  line?: string | undefined;
  comma?: Comma | undefined;
  /** learned lines, in place of lines that name each unit */
  profile?: SensorProfile | undefined;
  ask?: AskedLines | undefined;
  clock?: Clock | undefined;
}

/** A sensor of one room or bath, and a device that reads it. */
export type SensorDevice = Device<SensorReading>;

/** A slow sensor sends every ten seconds, ms; after three such gaps it is silent. */
export const sensorPatienceMs = 30_000;

/** A sensor by its address. Throws Refusal for an address, line setting or request that cannot be right. */
export function sensorAt({ address, line, comma, profile, ask, clock }: SensorSettings): SensorDevice {
  const read = (): BytesReader<SensorReading> =>
    profile ? readBySensorProfile(profile) : readPlainLines(comma);
  if (ask) requestBytes(ask);
  const told = {
    name: balanceName.sensor(address),
    read,
    patienceMs: sensorPatienceMs,
    ...(ask && { ask }),
    ...(clock && { clock }),
  };
  return /^tcp:\/\//.test(address) || (!address.startsWith("/") && /:\d+$/.test(address))
    ? createNetworkDevice<SensorReading>({ ...parseNetworkAddress(address), ...told })
    : createSerialDevice<SensorReading>({ path: address, ...(line !== undefined && { line }), ...told });
}
