import { message } from "../../calibration/message.ts";
import { nameMessage } from "../../drivers/balance-name.ts";
import { type Clock, systemClock } from "../../drivers/clock.ts";
import type { PortRoots } from "../../drivers/ports.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import type { SensorReading } from "../../drivers/sensors/quantity.ts";
import { type SensorDevice, sensorAt, sensorPatienceMs } from "../../drivers/sensors/sensor-at.ts";
import type { Sensor, SensorNow } from "./sensor.ts";
import type { SensorChoice } from "./sensor-choice.ts";

/** A sensor that is listened to. */
export interface HeardSensor extends Sensor {
  readonly choice: SensorChoice;
  /** the last lines as received, oldest first */
  recent(): readonly LineRecord<SensorReading>[];
  start(): void;
  close(): Promise<void>;
}

/** Lines kept for showing and for learning. */
const linesKept = 40;

/** Listens to a sensor as it was chosen. A reading older than three of its usual gaps is none. */
export function heardSensor(
  choice: SensorChoice,
  roots?: PortRoots,
  clock: Clock = systemClock,
  device: SensorDevice = sensorAt({ ...choice, roots, clock }),
): HeardSensor {
  let lines: LineRecord<SensorReading>[] = [];
  let newest: LineRecord<SensorReading> | undefined;
  const endHearing = device.onLine((record) => {
    newest = record;
    lines = [...lines.slice(-linesKept + 1), record];
  });

  function now(): SensorNow {
    const { name } = device;
    const last = lines.findLast(({ reading }) => reading !== undefined);
    if (newest?.event && newest.event.kind !== "open" && newest.event.kind !== "back")
      return { message: newest.event };
    if (!last?.reading || clock.monotonicMs() - last.monotonicMs > (device.patienceMs ?? sensorPatienceMs))
      return { message: message("sensor.silent", { sensor: nameMessage(name) }) };
    const { at, monotonicMs, raw } = last;
    const values = last.reading.values.map(({ quantity, text, unit, value }) => {
      const halfWidth = choice.halfWidths[quantity];
      const stated = halfWidth === undefined ? {} : { half_width: Number(halfWidth) };
      return {
        sensor: choice.address,
        place: choice.place,
        quantity,
        text,
        unit,
        value,
        ...stated,
        at,
        monotonicMs,
        raw,
      };
    });
    return { values };
  }

  return {
    choice,
    name: device.name,
    now,
    recent: () => lines,
    onLine: (listener) => device.onLine(() => listener()),
    start: () => device.start(),
    async close() {
      endHearing();
      await device.stop();
    },
  };
}
