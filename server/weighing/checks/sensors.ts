import { decimalsShown } from "../../../calibration/decimal.ts";
import type { Remedy } from "./check.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import type { Situation } from "./situation.ts";

/** Two thermometers in one beaker agree within what both are good for; without a stated half-width 0.5 °C is taken (common practice). */
const usualHalfWidthCelsius = 0.5;
/** Water in a beaker of 100 mL or more cannot change faster between two readings without being exchanged (common practice). */
const jumpCelsius = 0.5;

const readAgain: Remedy = { code: "check.remedy.read-thermometer" };
const lookAtSensor: Remedy = { code: "check.remedy.look-at-sensor" };

/** A sensor that the bench listens to gave nothing while the piece was in the liquid. */
export const sensorSilent: ProcedureCheck = {
  code: "check.sensor-silent",
  detect({ sensors }) {
    const [sensor] = sensors?.silent ?? [];
    if (sensor === undefined) return undefined;
    return { severity: "warn", params: { sensor }, remedies: [lookAtSensor, readAgain] };
  },
};

/** The temperature of the liquid leapt between two readings. */
export const temperatureJumped: ProcedureCheck = {
  code: "check.temperature-jumped",
  detect({ sensors }) {
    const shown = sensors?.liquid ?? [];
    for (const [place, { sensor, celsius }] of shown.entries()) {
      const before = shown.slice(0, place).findLast((one) => one.sensor === sensor);
      if (before === undefined || Math.abs(celsius - before.celsius) <= jumpCelsius) continue;
      return {
        severity: "warn",
        params: { sensor, before: before.celsius, now: celsius },
        remedies: [lookAtSensor, readAgain],
      };
    }
    return undefined;
  },
};

/**
 * A sensor shows another unit or another number of decimals than before, and goes on so. One that leaves zeros at the end out
 * goes back and forth and is not asked about.
 */
export const sensorDisplayChanged: ProcedureCheck = {
  code: "check.sensor-display-changed",
  detect({ sensors }) {
    const all = sensors?.liquid ?? [];
    for (const sensor of new Set(all.map((one) => one.sensor))) {
      const shown = all.flatMap((one) => (one.sensor === sensor && one.shown ? [one.shown] : []));
      const displays = shown.map(({ text, unit }) => `${unit} ${decimalsShown(text)}`);
      const at = displays.findIndex((display) => display !== displays[0]);
      if (at < 1 || displays.slice(at).includes(displays[0]!)) continue;
      const written = ({ text, unit }: (typeof shown)[number]) => `${text} ${unit}`;
      return {
        severity: "warn",
        params: { sensor, before: written(shown[at - 1]!), now: written(shown[at]!) },
        remedies: [lookAtSensor, readAgain],
      };
    }
    return undefined;
  },
};

/** Two thermometers say different things of one liquid: two sensors, or a sensor and what was typed. */
export const thermometersDiffer: ProcedureCheck = {
  code: "check.thermometers-differ",
  detect({ sensors, waterCelsius }) {
    const shown = sensors?.liquid ?? [];
    const newest = [...new Map(shown.map((one) => [one.sensor, one])).values()];
    const typed: Shown[] =
      sensors?.typed && waterCelsius !== undefined ? [{ sensor: "", celsius: waterCelsius }] : [];
    const all: Shown[] = [...newest, ...typed];
    for (const [place, one] of all.entries())
      for (const other of all.slice(place + 1)) {
        const allowed = halfWidthOf(one) + halfWidthOf(other);
        if (Math.abs(one.celsius - other.celsius) <= allowed) continue;
        return {
          severity: "warn",
          params: {
            with: other.sensor === "" ? "typed" : "sensor",
            sensor: one.sensor,
            one: one.celsius,
            other_sensor: other.sensor,
            other: other.celsius,
            allowed,
          },
          remedies: [readAgain, lookAtSensor],
        };
      }
    return undefined;
  },
};

type Shown = NonNullable<Situation["sensors"]>["liquid"][number];

const halfWidthOf = ({ halfWidth = usualHalfWidthCelsius }: Shown) => halfWidth;
