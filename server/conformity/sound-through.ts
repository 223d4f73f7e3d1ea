import { isMetalId, metal } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";

/** Longitudinal speed of sound, m/s; `estimated` tells a computed one from a printed one. */
export interface SoundThrough {
  mPerS: number;
  estimated: boolean;
}

/**
 * Longitudinal speed of sound in m/s: the printed value, else c = √(E(1−ν)/(ρ(1+ν)(1−2ν))) from the elastic constants,
 * else that of the core for a cored piece; null when none is known.
 */
export function soundThrough(m: Metal): SoundThrough | null {
  if (m.soundMPerS !== null) return { mPerS: m.soundMPerS, estimated: false };
  if (m.family === "cored-and-plated") return soundOfCore(m);
  const { elasticModulusGPa: e, poissonRatio: nu } = m;
  if (e === null || nu === null || nu >= 0.5) return null;
  const kgPerM3 = m.densityGPerCm3.nominal * 1000;
  return {
    mPerS: Math.sqrt((e * 1e9 * (1 - nu)) / (kgPerM3 * (1 + nu) * (1 - 2 * nu))),
    estimated: true,
  };
}

function soundOfCore(m: Metal): SoundThrough | null {
  if ("polymer" in m.composition) return null;
  const [main] = Object.entries(m.composition).sort(([, a], [, b]) => b[0] - a[0])[0]!;
  const element = `el-${main.toLowerCase()}`;
  const speed = isMetalId(element) ? metal(element).soundMPerS : null;
  return speed === null ? null : { mPerS: speed, estimated: true };
}
