import type { Message } from "../../calibration/message.ts";
import type { Sensed } from "../weighing/sensor-value.ts";

/** What a sensor says at this moment: its values, or why there are none. */
export type SensorNow = { values: readonly Sensed[]; message?: never } | { values?: never; message: Message };

/** A thermometer, barometer or hygrometer beside the balance. */
export interface Sensor {
  readonly name: string;
  now(): SensorNow;
  /** calls back for every line and event; returns the function that ends it */
  onLine(listener: () => void): () => void;
}
