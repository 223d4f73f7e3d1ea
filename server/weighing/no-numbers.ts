import type { NoReading, StatedDensity } from "./statement-shape.ts";

/** The numbers of a measurement that there is none of. */
export const noNumbers: Pick<NoReading, keyof StatedDensity> = {
  density_g_cm3: null,
  u_g_cm3: null,
  dof: null,
  k: null,
  expanded_g_cm3: null,
  interval_g_cm3: null,
  interval_from: null,
  density_20_g_cm3: null,
  relative_density: null,
  mass_g: null,
  u_mass_g: null,
  volume_cm3: null,
  u_volume_cm3: null,
  liquid_density_g_cm3: null,
  air_density_kg_m3: null,
  budget: [],
};
