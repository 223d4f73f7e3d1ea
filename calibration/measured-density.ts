/** A measured density as a finding needs it: the value, its interval, and the whole distribution behind it. */
export interface MeasuredDensity {
  /** best estimate at the liquid's temperature, g/cm³ */
  valueGPerCm3: number;
  /** standard uncertainty, g/cm³ */
  uGPerCm3: number;
  /** coverage interval, g/cm³ */
  intervalGPerCm3: readonly [number, number];
  /** coverage probability of the interval, such as 0.9545 */
  confidence: number;
  /** which evaluation the interval comes from */
  intervalFrom: "gum" | "monte-carlo";
  /** probability that the true density lies below x g/cm³; monotone, from the same evaluation as the interval */
  probabilityBelow(xGPerCm3: number): number;
}
