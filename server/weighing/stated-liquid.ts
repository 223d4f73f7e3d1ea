import type { Details } from "./details.ts";

/** Density of the liquid as it was stated for this weighing, g/cm³; undefined for the bench's water and one measured here. */
export const statedLiquidGPerCm3 = ({ liquid }: Details): number | undefined =>
  liquid?.kind === "stated" ? Number(liquid.density_g_cm3) : undefined;
