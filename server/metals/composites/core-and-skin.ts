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

const sorted = new WeakMap<Library, Bodies>();

/** What a library offers as cores and as skins; an owner's metals are both. */
function bodiesOf(library: Library): Bodies {
  const held = sorted.get(library);
  if (held) return held;
  const cores = library.metals.filter(isCore);
  const bodies = {
    cores,
    known: cores.filter((m) => likelihoodAsCore(m) !== "rare"),
    skins: [
      ...library.metals.filter(({ asSkin }) => asSkin !== undefined).sort((a, b) => a.asSkin! - b.asSkin!),
      ...library.metals.filter(({ family }) => family === "own"),
    ],
  };
  sorted.set(library, bodies);
  return bodies;
}

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
  const [c, s] = [core.densityGPerCm3, skin.densityGPerCm3];
  let [from, to] = [leastShare, mostShare];
  const hold = (slope: number, atZero: number) => {
    // keeps the s with atZero + slope·s ≥ 0
    if (slope > 0) from = Math.max(from, -atZero / slope);
    else if (slope < 0) to = Math.min(to, -atZero / slope);
    else if (atZero < 0) from = Number.POSITIVE_INFINITY;
  };
  hold(s.high - c.high, c.high - low);
  hold(c.low - s.low, high - c.low);
  return from <= to ? [from, to] : null;
}

function piece(core: Metal, skin: Metal, share: readonly [number, number], shape?: Shape): CoreAndSkin {
  return {
    kind: "core-and-skin",
    id: `core-${core.id}-skin-${skin.id}`,
    core,
    skin,
    skinShare: share,
    // of hundreds of pieces a few are shown, and a thickness is solved for
    get skinMm() {
      return shape ? ([skinThickness(shape, share[0]), skinThickness(shape, share[1])] as const) : null;
    },
    likelihood: likelihoodAsCore(core),
  };
}
