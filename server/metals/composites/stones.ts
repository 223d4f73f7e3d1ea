import { type Message, message } from "../../../calibration/message.ts";

/** Densities of stones a setting may hold, g/cm³, as ranges. Common practice; figures from memory. */
export const stoneDensities: readonly { called: Message; low: number; high: number; wet: boolean }[] = [
  { called: message("composite.stone.diamond"), low: 3.51, high: 3.53, wet: true },
  { called: message("composite.stone.corundum"), low: 3.95, high: 4.05, wet: true },
  { called: message("composite.stone.zirconia"), low: 5.6, high: 6.0, wet: true },
  { called: message("composite.stone.spinel"), low: 3.57, high: 3.65, wet: true },
  { called: message("composite.stone.topaz"), low: 3.5, high: 3.57, wet: true },
  { called: message("composite.stone.garnet"), low: 3.5, high: 4.3, wet: true },
  { called: message("composite.stone.quartz"), low: 2.64, high: 2.66, wet: true },
  { called: message("composite.stone.beryl"), low: 2.67, high: 2.78, wet: false },
  { called: message("composite.stone.glass"), low: 2.3, high: 4.5, wet: true },
  { called: message("composite.stone.opal"), low: 1.98, high: 2.2, wet: false },
  { called: message("composite.stone.turquoise"), low: 2.4, high: 2.9, wet: false },
  { called: message("composite.stone.pearl"), low: 2.6, high: 2.85, wet: false },
  { called: message("composite.stone.coral"), low: 2.6, high: 2.7, wet: false },
  { called: message("composite.stone.amber"), low: 1.05, high: 1.1, wet: false },
  { called: message("composite.stone.lapis"), low: 2.7, high: 3.0, wet: false },
  { called: message("composite.stone.malachite"), low: 3.6, high: 4.05, wet: false },
];
