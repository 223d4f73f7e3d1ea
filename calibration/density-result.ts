import type { DensityTable } from "./density-table.ts";
import type { Input } from "./input.ts";
import type { MeasurementCheck } from "./measurement-check.ts";

/** One named input and what it does to the density. */
export interface DensityBudgetRow {
  input: string;
  unit: Input["unit"];
  value: number;
  u: number;
  dof: number;
  /** ∂ρ/∂input, g/cm³ per unit of the input */
  sensitivity: number;
  /** |sensitivity|·u, g/cm³ */
  contributionGPerCm3: number;
  /** part of the variance, 0…1 */
  share: number;
}

/** The Monte Carlo evaluation behind a result. */
export interface MonteCarloSummary {
  meanGPerCm3: number;
  uGPerCm3: number;
  intervalGPerCm3: readonly [number, number];
  trials: number;
  /** true when the numerical tolerance of JCGM 101 was reached */
  settled: boolean;
  /** true when the GUM interval agrees with it within that tolerance (JCGM 101 clause 8) */
  validatesGum: boolean;
}

/** The distribution behind the quoted interval: Student's t about the value, or the table of the trials. */
export type DensityDistribution =
  | { kind: "student"; gPerCm3: number; uGPerCm3: number; dof: number }
  | { kind: "trials"; table: DensityTable };

/** Everything one measurement says, as plain data: it can be stored, or sent from a worker. */
export interface DensityResult {
  /** at the liquid's temperature */
  gPerCm3: number;
  uGPerCm3: number;
  /** effective degrees of freedom, Infinity when every u is taken as known */
  dof: number;
  /** coverage factor of the quoted interval: half its width over u */
  k: number;
  expandedGPerCm3: number;
  intervalGPerCm3: readonly [number, number];
  intervalFrom: "gum" | "monte-carlo";
  confidence: number;
  gumIntervalGPerCm3: readonly [number, number];
  /** absent when only the GUM evaluation was asked for */
  monteCarlo?: MonteCarloSummary;
  gPerCm3At20: number;
  uGPerCm3At20: number;
  /** density at 20 °C over that of water at its greatest density, and dry reading over displaced mass */
  relativeDensity: { d20over4: number; apparent: number };
  massGrams: number;
  uMassGrams: number;
  volumeCm3: number;
  uVolumeCm3: number;
  displacedGrams: number;
  uDisplacedGrams: number;
  /** null where there was no liquid */
  liquidGPerCm3: number | null;
  /** of the liquid, or of the piece where there was none */
  liquidCelsius: number;
  airKgPerM3: number;
  pieces: number;
  budget: readonly DensityBudgetRow[];
  warnings: readonly MeasurementCheck[];
  distribution: DensityDistribution;
}
