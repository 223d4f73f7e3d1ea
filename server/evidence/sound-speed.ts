/**
 * Longitudinal sound speed from a thickness and the time of one echo there and back, with its standard uncertainty.
 * c = 2·h/t: mm and µs in, m/s out. Throws RangeError for values not above zero.
 */
export function soundSpeed(
  thicknessMm: number,
  uThicknessMm: number,
  echoMicroseconds: number,
  uEchoMicroseconds: number,
): { mPerS: number; uMPerS: number } {
  for (const [name, value] of [
    ["Thickness", thicknessMm],
    ["Echo time", echoMicroseconds],
  ] as const)
    if (!(value > 0)) throw new RangeError(`${name} ${value}: right is a number above zero, in mm and µs.`);
  const mPerS = (2 * thicknessMm * 1000) / echoMicroseconds;
  return {
    mPerS,
    uMPerS: mPerS * Math.hypot(uThicknessMm / thicknessMm, uEchoMicroseconds / echoMicroseconds),
  };
}
