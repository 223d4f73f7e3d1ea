/** A point of a distribution's curve: density in g/cm³, height on any scale above zero. */
export interface CurvePoint {
  gPerCm3: number;
  height: number;
}

/**
 * The curve of a distribution that is known by its probability below x. Each height is a difference over three
 * steps, so that the staircase of a simulated distribution is drawn as one hill. Points run from `low` to `high`.
 */
export function curveOf(
  probabilityBelow: (gPerCm3: number) => number,
  low: number,
  high: number,
  steps = 60,
): CurvePoint[] {
  const step = (high - low) / steps;
  return Array.from({ length: steps + 1 }, (_, index) => {
    const gPerCm3 = low + index * step;
    const mass = probabilityBelow(gPerCm3 + 1.5 * step) - probabilityBelow(gPerCm3 - 1.5 * step);
    return { gPerCm3, height: Math.max(0, mass / (3 * step)) };
  });
}
