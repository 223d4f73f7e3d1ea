import type { Chance } from "./chance.ts";

/** What is known of a bench before a piece comes: the stated laws every true error is drawn from. */
export interface Bench {
  /** last place of the display, g */
  readabilityGrams: number;
  /** standard deviation of one dry and of one wet reading, g */
  dryScatterGrams: number;
  wetScatterGrams: number;
  /** half-width of the departure from a straight line at each load, g */
  linearityGrams: number;
  /** standard deviation of the scale factor, relative; the owner states it where it does not cancel */
  spanRelative: number;
  /** heaviest load of the balance, g: its departure bends over this range */
  capacityGrams: number;
  /** standard uncertainty of the thermometer, °C */
  thermometerCelsius: number;
  /** standard uncertainty of the stated air density, kg/m³ */
  airKgPerM3: number;
  /** stated dissolved solids, mg/L */
  solidsMgPerL: number;
  wireMillimetres: number;
  /** most that bubbles lift, mg */
  bubblesMg: number;
  /** how well a formula knows this water (isotopes, pressure, air under way), kg/m³ as a standard deviation */
  waterKgPerM3: number;
  /** water lost from a beaker on the pan between its two zeros, g at most */
  evaporatedGrams: number;
  /** standard deviation of the difference of temperature between two fillings of a flask, °C */
  flaskCelsius: number;
  /** the balance is zeroed once for all repeats of a load, or before each */
  zeroed: "once" | "each";
  /** height of the place, m */
  metres: number;
  /** how the air is stated: its density, what the weather station shows, or the height alone */
  airBy: "density" | "station" | "height";
  /** °C of room, water and piece, from and to */
  room: readonly [number, number];
}

/** The room as it is, and as the weather station tells it. */
export interface Room {
  celsius: number;
  pascals: number;
  humidity: number;
  /** kg/m³ */
  trueAir: number;
  /** `air` of a request */
  statedAir: Record<string, number>;
  /** m/s², the same for adjusting and weighing */
  gravity: number;
}

/** How warm room, water and piece are. */
export function roomCelsius(bench: Pick<Bench, "room">, chance: Chance): number {
  return chance.between("room", ...bench.room);
}

/** Density of moist air as an ideal gas, kg/m³: dry part over 287.05, vapour over 461.5 J/(kg K), Magnus vapour pressure [from memory]. */
function moistAir(celsius: number, pascals: number, humidity: number): number {
  const vapour = humidity * 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  const kelvin = celsius + 273.15;
  return (pascals - vapour) / (287.05 * kelvin) + vapour / (461.5 * kelvin);
}

type Weather = Pick<Room, "celsius" | "pascals" | "humidity" | "trueAir">;

function statedAir(bench: Bench, chance: Chance, weather: Weather): Room["statedAir"] {
  if (bench.airBy === "height") return { altitude_m: bench.metres };
  if (bench.airBy === "station")
    return {
      temperature_c: weather.celsius + chance.normal("station, temperature", 0, 0.5),
      pressure_hpa: weather.pascals / 100 + chance.normal("station, pressure", 0, 1),
      humidity_pct: 100 * weather.humidity + chance.normal("station, humidity", 0, 5),
      temperature_u_c: 0.5,
      pressure_u_hpa: 1,
      humidity_u_pct: 5,
    };
  const kgPerM3 = weather.trueAir + chance.normal("air stated", 0, bench.airKgPerM3);
  return { density_kg_m3: kgPerM3, u_kg_m3: bench.airKgPerM3 };
}

/** A room under ordinary weather, at the height of the place. */
export function roomOf(bench: Bench, chance: Chance): Room {
  const celsius = roomCelsius(bench, chance);
  const pascals = 101_325 * Math.exp(-bench.metres / 8434) + chance.normal("weather", 0, 800);
  const humidity = chance.between("humidity", 0.3, 0.7);
  const trueAir = moistAir(celsius, pascals, humidity);
  return {
    celsius,
    pascals,
    humidity,
    trueAir,
    statedAir: statedAir(bench, chance, { celsius, pascals, humidity, trueAir }),
    gravity: 9.81,
  };
}
