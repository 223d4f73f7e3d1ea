/** One value of a sensor beside the balance, with the line it came in. */
export interface Sensed {
  /** the port or address of the sensor */
  sensor: string;
  place: "liquid" | "air";
  quantity: "temperature" | "pressure" | "humidity";
  /** decimal text and unit as sent */
  text: string;
  unit: string;
  /** in °C, hPa or % */
  value: number;
  /** rectangular half-width its owner stated, in °C, hPa or %; undefined where none was stated */
  half_width?: number | undefined;
  /** arrival, ISO 8601 */
  at: string;
  monotonicMs: number;
  raw: string;
}

/** What the sensors show at one moment, and which of them show nothing. */
export interface SensorsNow {
  sensed: readonly Sensed[];
  silent: readonly string[];
}
