import type { Message } from "../../calibration/message.ts";
import type { SensedQuantity } from "../../drivers/sensors/quantity.ts";
import type { SensorPlace } from "./sensor-choice.ts";

/** One value of a sensor, with the line it came in. */
export interface Sensed {
  /** name of the sensor, the same in every language */
  sensor: string;
  place: SensorPlace;
  quantity: SensedQuantity;
  /** decimal text and unit as sent */
  text: string;
  unit: string;
  /** in °C, hPa or % */
  value: number;
  /** rectangular half-width its owner stated, in °C, hPa or %; undefined where none was stated */
  halfWidth?: number;
  /** arrival, ISO 8601 */
  at: string;
  monotonicMs: number;
  raw: string;
}

/** What a sensor says at this moment: its values, or why there are none. */
export type SensorNow =
  | { name: string; values: readonly Sensed[]; message?: never }
  | { name: string; values?: never; message: Message };

/** A thermometer, barometer or hygrometer beside the balance. */
export interface Sensor {
  readonly name: string;
  now(): SensorNow;
  /** calls back for every line and event; returns the function that ends it */
  onLine(listener: () => void): () => void;
}
