import { z } from "zod";
import { isDecimal } from "../../calibration/decimal.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { requestBytes, usualAskingMs } from "../../drivers/asked-lines.ts";
import { parseLineSettings } from "../../drivers/line-settings.ts";
import { parseNetworkAddress } from "../../drivers/network-balance.ts";
import type { PortRoots } from "../../drivers/ports.ts";
import { isPluggedSensor, pluggedSensor } from "../../drivers/sensors/plugged-sensors.ts";
import { sensedQuantities } from "../../drivers/sensors/quantity.ts";
import { sensorProfileShape } from "../../drivers/sensors/sensor-profile.ts";
import { cableOf } from "./balance-choice.ts";

/** Where a sensor hangs. A pressure is that of the room wherever the sensor is. */
export const sensorPlaces = ["liquid", "air"] as const;

const halfWidth = z.string().refine((text) => isDecimal(text) && Number(text) > 0 && Number(text) <= 50);

/** A sensor beside the balance, and what its owner told about it. */
export const sensorChoiceShape = z.strictObject({
  /** path of a serial port, host:port, or a sensor that is plugged in */
  address: z.string().trim().min(1).max(300),
  place: z.enum(sensorPlaces),
  line: z.string().max(40).default("9600-8n1"),
  comma: z.enum(["decimal", "thousands"]).optional(),
  /** what each quantity is good for: rectangular half-widths in °C, hPa and %, decimal text */
  halfWidths: z.partialRecord(z.enum(sensedQuantities), halfWidth),
  /** learned lines, where they do not name their units */
  profile: sensorProfileShape.optional(),
  ask: z
    .strictObject({
      request: z.string().min(1).max(200),
      when: z.literal("timer"),
      everyMs: z.number().int().min(100).max(60_000).default(usualAskingMs),
      ownerAgreed: z.literal(true),
    })
    .optional(),
});

export type SensorChoice = z.infer<typeof sensorChoiceShape>;

/**
 * The choice when it can be right, at the name that its sensor keeps when it is plugged in anew. Throws Refusal naming the
 * field of the form.
 */
export function checkedSensor(choice: unknown, roots?: PortRoots): SensorChoice {
  const read = sensorChoiceShape.safeParse(choice);
  if (!read.success) {
    const field = String(read.error.issues[0]?.path.at(0) ?? "address");
    throw new Refusal("sensor.choice", { field }, field);
  }
  const { address, line, ask } = read.data;
  if (isPluggedSensor(address)) {
    if (ask) throw new Refusal("sensor.request", { address }, "request");
    return { ...read.data, address: pluggedSensor(address, roots).address };
  }
  const cable = cableOf(address);
  if (cable === "serial" && !address.startsWith("/"))
    throw new Refusal("port.address", { address }, "address");
  if (cable === "serial") parseLineSettings(line);
  if (cable === "network") parseNetworkAddress(address);
  if (ask) requestBytes(ask);
  return read.data;
}
