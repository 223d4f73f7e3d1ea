import type { OpenCable } from "../cable.ts";
import type { Clock } from "../clock.ts";
import type { SensedQuantity, SensorReading } from "./quantity.ts";

/** A sensor of an open standard that is plugged in and needs no set-up. */
export interface FoundSensor {
  /** what it is and where it is plugged in, the same after it was plugged in anew or the machine was started */
  address: string;
  /** where the system shows it today */
  path: string;
  quantities: readonly SensedQuantity[];
  open(clock: Clock): OpenCable<SensorReading>;
}
