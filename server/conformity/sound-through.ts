import { remembered } from "../../calibration/remembered.ts";
import { componentDensity } from "../metals/component-density.ts";
import { isMetalId, metal } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { isPrecious } from "../metals/precious-metal.ts";
import { principal } from "../metals/share-of.ts";

/** Longitudinal speed of sound, m/s; `estimated` tells a computed one from a printed one. */
export interface SoundThrough {
  mPerS: number;
  estimated: boolean;
}

/**
 * Longitudinal speed of sound in m/s: the printed value; that of the core for a cored piece; for an alloy of a precious
 * metal by the speeds of its components, since elastic constants of soft alloys are not known well enough (at a Poisson
 * ratio of 0.42 a hundredth more makes it 5 % faster); else from the elastic constants. Null when none is known.
 */
export const soundThrough = (m: Metal): SoundThrough | null => (m.made ? through(m) : known(m).sound);

const known = remembered((m: Metal) => ({ sound: through(m) }));

function through(m: Metal): SoundThrough | null {
  if (m.soundMPerS !== null) return { mPerS: m.soundMPerS, estimated: false };
  if (m.family === "cored-and-plated") return soundOfCore(m);
  const mPerS = (isPrecious(m.family) ? byComponents(m) : null) ?? byElasticConstants(m);
  return mPerS === null ? null : { mPerS, estimated: true };
}

/** c = √(E(1−ν)/(ρ(1+ν)(1−2ν))). */
function byElasticConstants({
  elasticModulusGPa: e,
  poissonRatio: nu,
  densityGPerCm3,
}: Metal): number | null {
  if (e === null || nu === null || nu >= 0.5) return null;
  return Math.sqrt((e * 1e9 * (1 - nu)) / (densityGPerCm3.nominal * 1000 * (1 + nu) * (1 - 2 * nu)));
}

const byComponents = ({ composition, densityGPerCm3 }: Metal) =>
  soundByVolumes(
    Object.entries(composition).map(([symbol, [share]]) => ({ symbol, share })),
    densityGPerCm3.nominal,
  );

/**
 * Speed of sound in an alloy of about equally stiff metals, m/s, from mass shares and its density in g/cm³: its modulus ρc²
 * is the mean of those of its components by volume (Voigt 1889; from memory). Null where a component's speed is not known.
 */
export function soundByVolumes(
  parts: readonly { symbol: string; share: number }[],
  gPerCm3: number,
): number | null {
  let [volume, modulus] = [0, 0];
  for (const { symbol, share } of parts) {
    if (share === 0) continue;
    const speed = speedOfElement(symbol);
    if (speed === null) return null;
    const part = share / componentDensity(symbol).gPerCm3;
    volume += part;
    modulus += part * componentDensity(symbol).gPerCm3 * speed ** 2;
  }
  return volume === 0 ? null : Math.sqrt(modulus / volume / gPerCm3);
}

function speedOfElement(symbol: string): number | null {
  const id = `el-${symbol.toLowerCase()}`;
  if (!isMetalId(id)) return null;
  const element = metal(id);
  return element.soundMPerS ?? byElasticConstants(element);
}

function soundOfCore(m: Metal): SoundThrough | null {
  if ("polymer" in m.composition) return null;
  const main = `el-${principal(m).toLowerCase()}`;
  const speed = isMetalId(main) ? metal(main).soundMPerS : null;
  return speed === null ? null : { mPerS: speed, estimated: true };
}
