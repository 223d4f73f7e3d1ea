import { isMetalId, metal } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";

/** The harmless tests that can part two metals which density cannot, and the one for which only a laboratory is left. */
export type SeparatingTest = "magnet" | "conductivity" | "sound" | "laboratory";

export interface Separation {
  test: SeparatingTest;
  /** one sentence: what to do and what each of the two would show */
  says: string;
}

/** A coil meter on a small or curved piece is good to about 10 % (common practice): ranges must be further apart. */
const conductivityMargin = 1.15;
/** A thickness gauge on a piece whose thickness is known to 2 to 3 %: two speeds must differ by more (common practice). */
const soundMargin = 1.08;

/**
 * Longitudinal speed of sound in m/s: the printed value, else c = √(E(1−ν)/(ρ(1+ν)(1−2ν))) from the elastic constants,
 * else that of the core for a cored piece; null when none is known. `estimated` tells a computed one from a printed one.
 */
export function soundThrough(m: Metal): { mPerS: number; estimated: boolean } | null {
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

function soundOfCore(m: Metal): { mPerS: number; estimated: boolean } | null {
  if ("polymer" in m.composition) return null;
  const [main] = Object.entries(m.composition).sort(([, a], [, b]) => b[0] - a[0])[0]!;
  const element = `el-${main.toLowerCase()}`;
  const speed = isMetalId(element) ? metal(element).soundMPerS : null;
  return speed === null ? null : { mPerS: speed, estimated: true };
}

/** Three figures: an end interpolated for a mixture is known no better. */
const percent = (range: readonly [number, number]) => {
  const [low, high] = range.map((end) => Number(end.toPrecision(3)));
  return low === high ? `${low} % IACS` : `${low} to ${high} % IACS`;
};

function byMagnet(a: Metal, b: Metal): Separation | null {
  if (a.magnetism === b.magnetism || (a.magnetism !== "strong" && b.magnetism !== "strong")) return null;
  const pulled = a.magnetism === "strong" ? a : b;
  const other = pulled === a ? b : a;
  return { test: "magnet", says: `Hold a magnet to it: ${pulled.name} is pulled, ${other.name} is not.` };
}

function byConductivity(a: Metal, b: Metal): Separation | null {
  const [x, y] = [a.conductivityIacsPercent, b.conductivityIacsPercent];
  if (!x || !y || a.family === "cored-and-plated" || b.family === "cored-and-plated") return null;
  const apart = x[0] > y[1] * conductivityMargin || y[0] > x[1] * conductivityMargin;
  if (!apart) return null;
  return {
    test: "conductivity",
    says: `Measure the conductivity: ${a.name} shows ${percent(x)}, ${b.name} ${percent(y)}; a skin thicker than the coil sees hides what is under it.`,
  };
}

function bySound(a: Metal, b: Metal): Separation | null {
  const [x, y] = [soundThrough(a), soundThrough(b)];
  if (!x || !y || Math.max(x.mPerS, y.mPerS) < Math.min(x.mPerS, y.mPerS) * soundMargin) return null;
  const speed = (s: { mPerS: number; estimated: boolean }) =>
    `${s.estimated ? "about " : ""}${Math.round(s.mPerS / 10) * 10} m/s`;
  return {
    test: "sound",
    says: `Measure the longitudinal sound speed through the thickness: ${a.name} carries it at ${speed(x)}, ${b.name} at ${speed(y)}.`,
  };
}

function byWeakMagnet(a: Metal, b: Metal): Separation | null {
  if (a.magnetism === b.magnetism) return null;
  const drawn = a.magnetism === "weak" ? a : b;
  return {
    test: "magnet",
    says: `Hang it on a thread beside a strong magnet: ${drawn.name} may drift towards it, ${drawn === a ? b.name : a.name} does not; some grades of the first do not either.`,
  };
}

/** How each harmless test would separate two metals, or null where it would not; easiest first. */
export const separationBy: Readonly<
  Record<Exclude<SeparatingTest, "laboratory">, (a: Metal, b: Metal) => Separation | null>
> = { magnet: byMagnet, conductivity: byConductivity, sound: bySound };

/** The harmless test that separates the two most cheaply, in words; a laboratory when none here does. Pure. */
export function separation(a: Metal, b: Metal): Separation {
  return (
    byMagnet(a, b) ??
    byConductivity(a, b) ??
    bySound(a, b) ??
    byWeakMagnet(a, b) ?? {
      test: "laboratory",
      says: `No harmless test here separates ${a.name} from ${b.name}: a licensed laboratory does (gold ISO 11426, silver ISO 11427).`,
    }
  );
}
