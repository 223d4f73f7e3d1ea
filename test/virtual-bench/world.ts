import type { Chance } from "./chance.ts";
import { airFreeWater, saturationLoss, solidsGain } from "./water.ts";

/** What is known of a bench before a piece comes: the stated laws every true error is drawn from. */
export interface Bench {
  /** last place of the display, g */
  readabilityGrams: number;
  /** standard deviation of one dry and of one wet reading, g */
  dryScatterGrams: number;
  wetScatterGrams: number;
  /** half-width of the departure from a straight line at each load, g */
  linearityGrams: number;
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
}

/** How far the composition of dissolved solids may change what they weigh, relative half-width. */
const solidsComposition = 0.15;
/** The room and the water as they are, and as the thermometer and the weather station tell them. */
export interface World {
  trueCelsius: number;
  shownCelsius: number;
  trueAir: number;
  statedAir: number;
  /** kg/m³ */
  trueWater: number;
  /** m/s², the same for adjusting and weighing */
  gravity: number;
}

/** How warm room, water and piece are. */
export function roomCelsius(chance: Chance): number {
  return chance.between("room", 17, 24);
}

/** A room between 17 and 24 °C under ordinary weather, with its true water and air. */
export function world(bench: Bench, chance: Chance): World {
  const trueCelsius = roomCelsius(chance);
  const pascals = chance.normal("weather", 101_325, 800);
  const humidity = chance.between("humidity", 0.3, 0.7);
  // moist air as an ideal gas: dry pressure over 287.05, vapour over 461.5 J/(kg K), Magnus vapour pressure [from memory]
  const vapour = humidity * 611.2 * Math.exp((17.62 * trueCelsius) / (243.12 + trueCelsius));
  const kelvin = trueCelsius + 273.15;
  const trueAir = (pascals - vapour) / (287.05 * kelvin) + vapour / (461.5 * kelvin);
  const solids =
    bench.solidsMgPerL * (1 + chance.between("composition", -solidsComposition, solidsComposition));
  return {
    trueCelsius,
    shownCelsius: trueCelsius + chance.normal("thermometer", 0, bench.thermometerCelsius),
    trueAir,
    statedAir: trueAir + chance.normal("air stated", 0, bench.airKgPerM3),
    trueWater:
      airFreeWater(trueCelsius) +
      chance.normal("isotopes", 0, bench.waterKgPerM3) -
      saturationLoss(trueCelsius) * chance.share("dissolved air") +
      solidsGain(solids),
    gravity: 9.81,
  };
}
