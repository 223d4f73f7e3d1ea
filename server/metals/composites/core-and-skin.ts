import { remembered } from "../../../calibration/remembered.ts";
import { builtIn, type Library } from "../library.ts";
import type { Likelihood, Metal } from "../metal.ts";
import type { DensityInterval } from "./binary-mixtures.ts";
import { type Shape, skinThickness } from "./shape.ts";

/** A core under an even skin that reaches a density interval. */
export interface CoreAndSkin {
  kind: "core-and-skin";
  id: string;
  core: Metal;
  skin: Metal;
  /** share of the volume that is skin, lowest and highest */
  skinShare: readonly [number, number];
  /** thickness of the skin in mm for the given shape, or null when no shape was given */
  skinMm: readonly [number, number] | null;
  likelihood: Likelihood;
}

/** A free mixture is no core of its own density; it is answered by the mixtures. */
const widestBand = 0.06;
function isCore({ asCore, recipes, family, densityGPerCm3: { low, high, nominal } }: Metal): boolean {
  if (recipes || asCore === "never" || family === "cored-and-plated") return false;
  return (high - low) / nominal < widestBand;
}

/** Cores somebody is known to use are marked in their rows (common practice), and any other is called rare. */
const likelihoodAsCore = ({ family, likelihood, asCore }: Metal): Likelihood => {
  // an owner's metal is as likely a core as its owner says it is met
  if (family === "own") return likelihood;
  return asCore === "common" || asCore === "possible" ? asCore : "rare";
};

interface Bodies {
  cores: readonly Metal[];
  /** cores somebody is known to use */
  known: readonly Metal[];
  skins: readonly Metal[];
}

/** What a library offers as cores and as skins; an owner's metals are both. */
const bodiesOf = remembered(({ metals }: Library): Bodies => {
  const cores = metals.filter(isCore);
  return {
    cores,
    known: cores.filter((m) => likelihoodAsCore(m) !== "rare"),
    skins: [
      ...metals.filter(({ asSkin }) => asSkin !== undefined).sort((a, b) => a.asSkin! - b.asSkin!),
      ...metals.filter(({ family }) => family === "own"),
    ],
  };
});

/** Below this share the skin is a plating, and the piece has the core's own density. */
const leastShare = 0.0005;
/** Above this share the core is lost in the skin's own band. */
const mostShare = 0.995;

/**
 * Every core and skin that reaches the interval within their own bands, with the thickness of skin that the shape needs.
 * Voids between them are taken as none.
 */
export function coreAndSkins(
  interval: DensityInterval,
  shape?: Shape,
  library: Library = builtIn,
): CoreAndSkin[] {
  const { cores, skins } = bodiesOf(library);
  return matching(cores, skins, interval, shape);
}

/** The same for cores somebody is known to use, under the skins asked for. */
export function knownCoreAndSkins(
  interval: DensityInterval,
  library: Library,
  isAsked: (skin: Metal) => boolean,
): CoreAndSkin[] {
  const { known, skins } = bodiesOf(library);
  return matching(known, skins.filter(isAsked), interval);
}

function matching(
  cores: readonly Metal[],
  skins: readonly Metal[],
  interval: DensityInterval,
  shape?: Shape,
): CoreAndSkin[] {
  const found: CoreAndSkin[] = [];
  for (const skin of skins)
    for (const core of cores) {
      if (core.id === skin.id) continue;
      const share = skinShare(core, skin, interval);
      if (share) found.push(piece(core, skin, share, shape));
    }
  return found;
}

/** Shares s with s·skin + (1 − s)·core meeting the interval for some densities inside both bands; null when none does. */
function skinShare(core: Metal, skin: Metal, [low, high]: DensityInterval): readonly [number, number] | null {
  const c = core.densityGPerCm3;
  const s = skin.densityGPerCm3;
  // dense enough: c.high + rise·share ≥ low; light enough: c.low − fall·share ≤ high
  const rise = s.high - c.high;
  const fall = c.low - s.low;
  const from = Math.max(leastShare, leastWhere(rise, c.high - low), leastWhere(fall, high - c.low));
  const to = Math.min(mostShare, mostWhere(rise, c.high - low), mostWhere(fall, high - c.low));
  return from <= to ? [from, to] : null;
}

/** The least share s with atZero + slope·s ≥ 0, and the most. */
function leastWhere(slope: number, atZero: number): number {
  if (slope > 0) return -atZero / slope;
  return slope === 0 && atZero < 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
}
const mostWhere = (slope: number, atZero: number): number =>
  slope < 0 ? -atZero / slope : Number.POSITIVE_INFINITY;

function piece(core: Metal, skin: Metal, share: readonly [number, number], shape?: Shape): CoreAndSkin {
  const found: CoreAndSkin = {
    kind: "core-and-skin",
    id: `core-${core.id}-skin-${skin.id}`,
    core,
    skin,
    skinShare: share,
    skinMm: null,
    likelihood: likelihoodAsCore(core),
  };
  if (!shape) return found;
  return {
    ...found,
    // of hundreds of pieces a few are shown, and a thickness is solved for
    get skinMm() {
      return [skinThickness(shape, share[0]), skinThickness(shape, share[1])] as const;
    },
  };
}
