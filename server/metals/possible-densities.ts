/** Osmium at 20 °C, g/cm³, the densest element: 22.59 (CRC Handbook of Chemistry and Physics, from memory). */
export const densest = 22.59;

/** Densities a solid piece of metal can have, g/cm³: below magnesium-rich alloys and above osmium there is none. */
export const solidMetal = { low: 2.5, high: 22.7 };

/** Nothing that is weighed for its metal is lighter, g/cm³, hollow and with its stones (common practice). */
export const lightestItem = 1.5;
