/** Densities of stones a setting may hold, g/cm³, as ranges. Common practice; figures from memory. */
export const stoneDensities: readonly { name: string; low: number; high: number; wet: boolean }[] = [
  { name: "diamond", low: 3.51, high: 3.53, wet: true },
  { name: "corundum (ruby, sapphire)", low: 3.95, high: 4.05, wet: true },
  { name: "cubic zirconia", low: 5.6, high: 6.0, wet: true },
  { name: "spinel", low: 3.57, high: 3.65, wet: true },
  { name: "topaz", low: 3.5, high: 3.57, wet: true },
  { name: "garnet", low: 3.5, high: 4.3, wet: true },
  { name: "quartz (amethyst, citrine)", low: 2.64, high: 2.66, wet: true },
  { name: "emerald, beryl", low: 2.67, high: 2.78, wet: false },
  { name: "glass", low: 2.3, high: 4.5, wet: true },
  { name: "opal", low: 1.98, high: 2.2, wet: false },
  { name: "turquoise", low: 2.4, high: 2.9, wet: false },
  { name: "pearl", low: 2.6, high: 2.85, wet: false },
  { name: "coral", low: 2.6, high: 2.7, wet: false },
  { name: "amber", low: 1.05, high: 1.1, wet: false },
  { name: "lapis lazuli", low: 2.7, high: 3.0, wet: false },
  { name: "malachite", low: 3.6, high: 4.05, wet: false },
];
