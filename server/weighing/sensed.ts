import { mean } from "../../calibration/mean.ts";
import type { BalanceProfile } from "../checks/balance-profile.ts";
import { correctionAt, type TemperatureCorrection } from "../checks/thermometer-points.ts";
import type { Item } from "./item.ts";
import type { Sensed } from "./sensor-value.ts";

/** A temperature of the liquid in °C, with what it is good for and how far it moved across the weighing, where known. */
export interface LiquidTemperature {
  /** corrected, where `checked` says so */
  celsius: number;
  from: "typed" | "sensor";
  /** rectangular half-width of the sensor, °C */
  halfWidth?: number;
  /** the sensor's own check: what was added to what it showed, and what is known of that */
  checked?: TemperatureCorrection;
  /** half of the range of the readings that count, °C */
  halfRange?: number;
}

type Weighed = Pick<Item, "captures" | "waterCelsius">;
type CheckedSensors = BalanceProfile["sensors"];

/**
 * The temperature of the liquid: as typed, which counts before every sensor; else the mean of what the sensors in the
 * liquid showed with the readings that count, those of the piece in the liquid where there are any. Sensors that were
 * checked are corrected and count alone. Undefined without both.
 */
export function liquidTemperature(
  item: Weighed,
  sensors: CheckedSensors = {},
): LiquidTemperature | undefined {
  if (item.waterCelsius !== undefined) return { celsius: Number(item.waterCelsius), from: "typed" };
  const captures = item.captures.filter(({ excluded }) => excluded === undefined);
  const inLiquid = captures.flatMap((capture) => liquidTemperatures(capture));
  const wet = captures.filter(({ role }) => role !== "dry" && role !== "zero").flatMap(liquidTemperatures);
  const counting = wet.length > 0 ? wet : inLiquid;
  if (counting.length === 0) return undefined;
  const halfRange = range(inLiquid.map(({ value }) => value)) / 2;
  const corrected = counting.flatMap(({ sensor, value }) => {
    const found = correctionAt(sensors[sensor] ?? [], value);
    return found ? [{ celsius: value + found.correctionCelsius, found }] : [];
  });
  if (corrected.length > 0) {
    const widest = corrected.reduce((a, b) => (b.found.uCelsius > a.found.uCelsius ? b : a)).found;
    const correctionCelsius = mean(corrected.map(({ found }) => found.correctionCelsius));
    return {
      celsius: mean(corrected.map(({ celsius }) => celsius)),
      from: "sensor",
      checked: { ...widest, correctionCelsius },
      halfRange,
    };
  }
  const halfWidths = counting.flatMap(({ half_width }) => (half_width === undefined ? [] : [half_width]));
  return {
    celsius: mean(counting.map(({ value }) => value)),
    from: "sensor",
    ...(halfWidths.length === counting.length ? { halfWidth: Math.max(...halfWidths) } : {}),
    halfRange,
  };
}

/** What thermometers in the liquid showed with one reading. */
export function liquidTemperatures({ sensed = [] }: Pick<Item["captures"][number], "sensed">): Sensed[] {
  return sensed.filter(({ place, quantity }) => place === "liquid" && quantity === "temperature");
}

/** The air as sensors showed it with the readings that count, in °C, hPa and %; undefined unless all three were shown. */
export function sensedAir({ captures }: Pick<Item, "captures">) {
  const shown = captures
    .filter(({ excluded }) => excluded === undefined)
    .flatMap(({ sensed = [] }) => sensed);
  const of = (quantity: Sensed["quantity"]) =>
    shown
      .filter((one) => one.quantity === quantity && (one.place === "air" || quantity === "pressure"))
      .map(({ value }) => value);
  const [temperature, pressure, humidity] = [of("temperature"), of("pressure"), of("humidity")];
  if (temperature.length === 0 || pressure.length === 0 || humidity.length === 0) return undefined;
  return { temperature_c: mean(temperature), pressure_hpa: mean(pressure), humidity_pct: mean(humidity) };
}

const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
