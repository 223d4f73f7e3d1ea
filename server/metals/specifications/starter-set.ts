import { type Code, message } from "../../../calibration/message.ts";
import type { Specification } from "./specification.ts";

const coinage1870 =
  "Coinage Act 1870 (33 & 34 Vict. c. 10), first schedule, as printed in Encyclopaedia Britannica 9th ed. vol. 16, p. 483; diameters common practice";
const union1865 =
  "Monetary convention of 23 December 1865 (Latin Monetary Union), as printed in Willis 1901; silver tolerances from handbooks of the time, wear limits from memory";
const german1871 =
  "German law of 4 December 1871 and Münzgesetz of 9 July 1873 / 1 June 1909, § 3; diameters from memory";
const vienna1857 =
  "Vienna coinage treaty of 24 January 1857, as printed in Wagner's Handbuch; diameter from memory";
const scandinavia1872 =
  "Scandinavian coinage convention of 1872, as printed in official handbooks of 1906 and 1914";

/** Ids of the starter set; each has its name under `specification.…`. */
type StarterId = Code extends infer Of ? (Of extends `specification.${infer Id}` ? Id : never) : never;

/** One row of a law's table. */
type Row = [
  id: StarterId,
  metal: string,
  massG: number,
  massToleranceG: number | null,
  fineness: number,
  finenessTolerance: number | null,
  diameterMm: number | null,
  more?: Pick<Specification, "leastCurrentG" | "thicknessMm">,
];

const from = (source: string, rows: Row[]): Specification[] =>
  rows.map(([id, metal, massG, massToleranceG, fineness, finenessTolerance, diameterMm, more]) => ({
    id,
    called: message(`specification.${id}`),
    metal,
    massG,
    massToleranceG,
    finenessPermille: fineness,
    finenessTolerancePermille: finenessTolerance,
    ...(diameterMm === null ? {} : { diameterMm }),
    ...more,
    source,
    verified: true,
  }));

/** A coin of the union was taken back once wear had lost it so many ‰ beyond its tolerance (convention of 1865, from memory). */
const wornTo = (massG: number, tolerancePermille: number, wearPermille: number) => ({
  leastCurrentG: massG * (1 - (tolerancePermille + wearPermille) / 1000),
});

/** ‰ of a mass, in grams, as the conventions set their tolerances. */
const permilleOf = (massG: number, permille: number) => (massG * permille) / 1000;

/** A starter set of coin specifications, each from the law or convention that made it; owners add their own. */
export const starterSet: readonly Specification[] = [
  ...from(coinage1870, [
    ["gb-5-pounds", "au-22r", 39.94028, 0.06479, 916.66, 2, 36.02, { leastCurrentG: 39.68935 }],
    ["gb-2-pounds", "au-22r", 15.97611, 0.02592, 916.66, 2, 28.4, { leastCurrentG: 15.87574 }],
    [
      "gb-sovereign",
      "au-22r",
      7.98805,
      0.01296,
      916.66,
      2,
      22.05,
      { leastCurrentG: 7.93787, thicknessMm: 1.52 },
    ],
    ["gb-half-sovereign", "au-22r", 3.99402, 0.00648, 916.66, 2, 19.3, { leastCurrentG: 3.96083 }],
    ["gb-crown", "ag-925", 28.2759, 0.11781, 925, 4, 38.6],
    ["gb-half-crown", "ag-925", 14.13795, 0.0589, 925, 4, 32.3],
    ["gb-shilling", "ag-925", 5.65518, 0.02356, 925, 4, 23.6],
    ["gb-sixpence", "ag-925", 2.82759, 0.01178, 925, 4, 19.4],
  ]),
  ...from(union1865, [
    ["union-100-francs", "au-900r", 32.25806, permilleOf(32.25806, 1), 900, 2, 35, wornTo(32.25806, 1, 5)],
    ["union-50-francs", "au-900r", 16.12903, permilleOf(16.12903, 1), 900, 2, 28, wornTo(16.12903, 1, 5)],
    ["union-20-francs", "au-900r", 6.45161, permilleOf(6.45161, 2), 900, 2, 21, wornTo(6.45161, 2, 5)],
    ["union-10-francs", "au-900r", 3.2258, permilleOf(3.2258, 2), 900, 2, 19, wornTo(3.2258, 2, 5)],
    ["union-5-francs-gold", "au-900r", 1.6129, permilleOf(1.6129, 3), 900, 2, 17, wornTo(1.6129, 3, 5)],
    ["union-5-francs", "ag-900", 25, permilleOf(25, 3), 900, 2, 37, wornTo(25, 3, 10)],
    ["union-2-francs", "ag-835", 10, permilleOf(10, 5), 835, 3, null, wornTo(10, 5, 50)],
    ["union-1-franc", "ag-835", 5, permilleOf(5, 5), 835, 3, null, wornTo(5, 5, 50)],
    ["union-50-centimes", "ag-835", 2.5, permilleOf(2.5, 7), 835, 3, null, wornTo(2.5, 7, 50)],
    ["union-20-centimes", "ag-835", 1, permilleOf(1, 10), 835, 3, null, wornTo(1, 10, 50)],
  ]),
  ...from(german1871, [
    ["de-20-mark", "au-900r", 7.96495, permilleOf(7.96495, 2.5), 900, 2, 22.5, { leastCurrentG: 7.9251 }],
    ["de-5-mark", "ag-900", 27.77778, permilleOf(27.77778, 10), 900, 3, 38],
  ]),
  ...from(vienna1857, [["de-vereinsthaler", "ag-900", 18.51852, permilleOf(18.51852, 4), 900, 3, 33]]),
  ...from(scandinavia1872, [
    ["nordic-20-kroner", "au-900r", 8.96057, null, 900, null, 23],
    ["nordic-2-kroner", "ag-800", 15, null, 800, null, null],
    ["nordic-1-krone", "ag-800", 7.5, null, 800, null, null],
  ]),
];
