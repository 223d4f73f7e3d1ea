import type { CheckResult } from "./check.ts";
import { originOf, type ProfileNumber } from "./current-number.ts";
import type { ThermometerFound } from "./thermometer.ts";

/** A temperature at which the thermometer was compared. */
export interface ThermometerPoint {
  atCelsius: number;
  /** to be added to what it shows, °C */
  correctionCelsius: number;
  /** of a corrected reading at this temperature */
  uCelsius: ProfileNumber;
}

/** A comparison takes the place of an earlier one so near, °C. */
const samePlaceCelsius = 2;
/** Away from its points a thermometer may err by this much more for each °C, as a half-width (common practice). */
const strayingPerCelsius = 0.01;

/** The points that passed comparisons give, coldest first; of those at about one temperature the newest. Results oldest first. */
export function thermometerPoints(results: readonly CheckResult[]): ThermometerPoint[] {
  const points: ThermometerPoint[] = [];
  for (const result of results.toReversed()) {
    if (!result.passed || (result.kind !== "thermometer" && result.kind !== "ice-point")) continue;
    const { atCelsius, correctionCelsius, uCelsius, dof } = result.found as ThermometerFound;
    if (points.some((point) => Math.abs(point.atCelsius - atCelsius) < samePlaceCelsius)) continue;
    const u = { value: uCelsius, dof, origin: originOf(result) };
    points.push({ atCelsius, correctionCelsius, uCelsius: u });
  }
  return points.sort((a, b) => a.atCelsius - b.atCelsius);
}

export interface TemperatureCorrection {
  /** to be added to what it shows, °C */
  correctionCelsius: number;
  /** standard uncertainty of the corrected temperature, °C */
  uCelsius: number;
  dof: number | null;
}

/**
 * Correction at a temperature, °C, and what is known of it: between two points along the straight line that joins them,
 * beyond them that of the nearest. u: of the points by their weights, which one reference may have moved together, and
 * `strayingPerCelsius` times the distance to the nearest one as a rectangle. Undefined without points.
 */
export function correctionAt(
  points: readonly ThermometerPoint[],
  shownCelsius: number,
): TemperatureCorrection | undefined {
  const above = points.findIndex(({ atCelsius }) => atCelsius >= shownCelsius);
  const upper = points.at(above);
  if (upper === undefined) return undefined;
  const lower = points[above - 1] ?? upper;
  const between = above > 0 ? (shownCelsius - lower.atCelsius) / (upper.atCelsius - lower.atCelsius) : 1;
  const mix = (of: (point: ThermometerPoint) => number) => (1 - between) * of(lower) + between * of(upper);
  const away = Math.min(...points.map(({ atCelsius }) => Math.abs(shownCelsius - atCelsius)));
  const known = mix((point) => point.uCelsius.value);
  const uCelsius = Math.hypot(known, (strayingPerCelsius * away) / Math.sqrt(3));
  const nearest = between < 0.5 ? lower : upper;
  const { dof } = nearest.uCelsius;
  return {
    correctionCelsius: mix((point) => point.correctionCelsius),
    uCelsius,
    // Welch and Satterthwaite: what strays is taken as known
    dof: dof === null ? null : dof * (uCelsius / known) ** 4,
  };
}
