/** A published composition with the density printed for it. */
export interface PublishedPair {
  fractions: Readonly<Record<string, number>>;
  gPerCm3: number;
  source: string;
  /** what the print itself may be off by, relative: composition range of the grade, last digit, age */
  printedWithin: number;
}

const pairs = (
  source: string,
  printedWithin: number,
  rows: readonly (readonly [gPerCm3: number, percent: Readonly<Record<string, number>>])[],
): PublishedPair[] =>
  rows.map(([gPerCm3, percent]) => {
    const whole = Object.values(percent).reduce((sum, share) => sum + share, 0);
    const fractions = Object.fromEntries(Object.entries(percent).map(([of, share]) => [of, share / whole]));
    return { fractions, gPerCm3, source, printedWithin };
  });

/**
 * Compositions in per cent by mass. Rose's row 333/667 (13.00) misses every law by 5 %: a misprint, and absent here on
 * purpose.
 */
export const publishedPairs: readonly PublishedPair[] = [
  // values of 1900 at 15 °C, whose ends (19.26 and 10.45) are themselves 0.2 and 0.5 % low
  ...pairs("T. K. Rose, The Metallurgy of Gold, Table XIV", 0.008, [
    [18.08, { Au: 91.7, Ag: 8.3 }],
    [16.96, { Au: 84.3, Ag: 15.7 }],
    [16.03, { Au: 75, Ag: 25 }],
    [13.6, { Au: 50, Ag: 50 }],
    [11.78, { Au: 25, Ag: 75 }],
    [11.28, { Au: 16.7, Ag: 83.3 }],
  ]),
  ...pairs("T. K. Rose, The Metallurgy of Gold, standard gold", 0.001, [
    [17.48, { Au: 91.67, Cu: 8.33 }],
    [17.16, { Au: 90, Cu: 10 }],
  ]),
  ...pairs("lattice constants, Université du Mans, Alliages Au-Cu; density computed from them", 0.001, [
    [14.89, { Au: 75.6, Cu: 24.4 }],
    [12.15, { Au: 50.8, Cu: 49.2 }],
  ]),
  // the grades allow about 1.5 % more or less of each metal
  ...pairs("ASM Metals Handbook vol. 2, coppers and copper alloys, wrought (from memory)", 0.003, [
    [8.86, { Cu: 95, Zn: 5 }],
    [8.8, { Cu: 90, Zn: 10 }],
    [8.75, { Cu: 85, Zn: 15 }],
    [8.67, { Cu: 80, Zn: 20 }],
    [8.53, { Cu: 70, Zn: 30 }],
    [8.47, { Cu: 65, Zn: 35 }],
    [8.39, { Cu: 60, Zn: 40 }],
    [8.5, { Cu: 61.5, Zn: 35.5, Pb: 3 }],
    [8.86, { Cu: 95, Sn: 5 }],
    [8.8, { Cu: 92, Sn: 8 }],
    [8.78, { Cu: 90, Sn: 10 }],
    [8.17, { Cu: 95, Al: 5 }],
    [7.78, { Cu: 92, Al: 8 }],
    [8.94, { Cu: 88.6, Ni: 10, Fe: 1.4 }],
    [8.94, { Cu: 79, Ni: 21 }],
    [8.94, { Cu: 69.5, Ni: 30, Fe: 0.5 }],
    [8.69, { Cu: 65, Ni: 10, Zn: 25 }],
    [8.73, { Cu: 65, Ni: 18, Zn: 17 }],
    [8.7, { Cu: 55, Ni: 18, Zn: 27 }],
  ]),
  ...pairs("Copper Development Association, alloy sheet C43500", 0.004, [
    [8.66, { Cu: 81, Zn: 18.1, Sn: 0.9 }],
  ]),
  ...pairs("ASM Metals Handbook vol. 2, precious metals (from memory)", 0.002, [
    [10.36, { Ag: 92.5, Cu: 7.5 }],
    [10.31, { Ag: 90, Cu: 10 }],
    [9.99, { Ag: 72, Cu: 28 }],
    [21.53, { Pt: 90, Ir: 10 }],
    [21.61, { Pt: 80, Ir: 20 }],
    [20.0, { Pt: 90, Rh: 10 }],
    [19.61, { Pt: 87, Rh: 13 }],
    [20.67, { Pt: 95, Ru: 5 }],
    [21.34, { Pt: 95, W: 5 }],
    [19.92, { Au: 70, Pt: 30 }],
  ]),
  ...pairs("ASM Metals Handbook vol. 2, lead and tin (from memory)", 0.004, [
    [8.87, { Pb: 50, Sn: 50 }],
    [8.4, { Pb: 37, Sn: 63 }],
    [9.28, { Pb: 60, Sn: 40 }],
    [9.73, { Pb: 70, Sn: 30 }],
    [11.04, { Pb: 96, Sb: 4 }],
    [8.56, { Bi: 58, Sn: 42 }],
    [7.28, { Sn: 92, Sb: 6, Cu: 2 }],
  ]),
  ...pairs("ASTM E494 Table X3.1", 0.005, [[10.9, { Pb: 94, Sb: 6 }]]),
  // full density by the makers of powder metals, minima printed in ASTM B702 lie 3 % below
  ...pairs("ASTM B777-15 Table 1, middle of class 1 and 3", 0.015, [
    [17.08, { W: 90, Ni: 7, Fe: 3 }],
    [18.05, { W: 95, Ni: 3.5, Fe: 1.5 }],
  ]),
  // die castings hold 1 to 2 % of pores
  ...pairs("ASTM B86 (from memory)", 0.016, [[6.6, { Zn: 96, Al: 4 }]]),
  // the grade holds up to 2 % manganese, silicon and carbon that are left out here
  ...pairs("ASM Metals Handbook vol. 2, nickel (from memory)", 0.009, [[8.83, { Ni: 66, Cu: 32, Fe: 1.5 }]]),
];
