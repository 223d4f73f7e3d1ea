import { exactly, type Fraction, shownText } from "../../calibration/fraction.ts";

export const thousand = exactly("1000");

/** Decimals of figures that a density says: finer than any balance, and exact from there on. */
export const densityDecimals = 6;
/** Decimals that a mass or a fineness is written with where it does not end before. */
const mostDecimals = 9;

/** A figure of a density, a binary number, as the decimal it is counted with. */
export const ofDensity = (value: number): Fraction => exactly(value.toFixed(densityDecimals));

/** A mass or a fineness as a settlement writes it, with so many decimals at least. */
export const written = (value: Fraction, least = 0): string => shownText(value, mostDecimals, least);
