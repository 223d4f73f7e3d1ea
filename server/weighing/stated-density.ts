import type { DensityResult } from "../../calibration/density-result.ts";
import type { StatedDensity } from "./statement-shape.ts";

/** The numbers of a measurement as a statement holds them. */
export function numbersOf(result: DensityResult): StatedDensity {
  return {
    density_g_cm3: result.gPerCm3,
    u_g_cm3: result.uGPerCm3,
    dof: Number.isFinite(result.dof) ? result.dof : null,
    k: result.k,
    expanded_g_cm3: result.expandedGPerCm3,
    interval_g_cm3: [...result.intervalGPerCm3],
    interval_from: result.intervalFrom,
    density_20_g_cm3: result.gPerCm3At20,
    relative_density: { d20_4: result.relativeDensity.d20over4, apparent: result.relativeDensity.apparent },
    mass_g: result.massGrams,
    u_mass_g: result.uMassGrams,
    volume_cm3: result.volumeCm3,
    u_volume_cm3: result.uVolumeCm3,
    liquid_density_g_cm3: result.liquidGPerCm3,
    air_density_kg_m3: result.airKgPerM3,
    budget: result.budget.map(({ input, unit, value, u, sensitivity, contributionGPerCm3, share }) => ({
      input,
      unit,
      value,
      u,
      sensitivity,
      contribution_g_cm3: contributionGPerCm3,
      share,
    })),
  };
}
