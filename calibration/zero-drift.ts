/**
 * Readings between two zeros, less the part of their run one way that the zero made as well, g: evaporation from a vessel
 * moves readings and zero alike, a film taken along with the piece the zero alone. So between none and the whole of an
 * even drift, as far as it lessens the run. The mean stays where it is.
 */
export function withoutZeroDrift(readings: readonly number[], zeroChange: number): readonly number[] {
  const n = readings.length;
  if (n < 2 || zeroChange === 0) return readings;
  const middle = (n - 1) / 2;
  const slope =
    readings.reduce((sum, grams, place) => sum + (place - middle) * grams, 0) / ((n * (n * n - 1)) / 12);
  const perReading = zeroChange / (n + 1);
  const share = Math.min(1, Math.max(0, slope / perReading));
  return readings.map((grams, place) => grams - share * perReading * (place - middle));
}
