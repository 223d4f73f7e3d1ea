/** How far the sound went, in thicknesses of the wall: how a thickness gauge is read (common practice). */
export const wallPaths = [1, 2, 4] as const;

/** A thickness and the time sound took to cross it, with standard uncertainties; the probe's own delay taken off. */
export interface Echo {
  thicknessMm: number;
  uThicknessMm: number;
  microseconds: number;
  uMicroseconds: number;
  /** thicknesses crossed */
  paths: number;
}

/**
 * Longitudinal sound speed from a thickness and a time of flight, with its standard uncertainty: c = n·h/t, mm and µs
 * in, m/s out. Throws RangeError for values not above zero.
 */
export function soundSpeed({ thicknessMm, uThicknessMm, microseconds, uMicroseconds, paths }: Echo): {
  mPerS: number;
  uMPerS: number;
} {
  for (const [name, value] of [
    ["Thickness", thicknessMm],
    ["Echo time", microseconds],
    ["Wall paths", paths],
  ] as const)
    if (!(value > 0)) throw new RangeError(`${name} ${value}: right is a number above zero, in mm and µs.`);
  const mPerS = (paths * thicknessMm * 1000) / microseconds;
  return { mPerS, uMPerS: mPerS * Math.hypot(uThicknessMm / thicknessMm, uMicroseconds / microseconds) };
}
