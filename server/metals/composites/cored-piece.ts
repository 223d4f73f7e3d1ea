import { soundThrough } from "../../conformity/sound-through.ts";
import { worthPerGram } from "../../conformity/worth.ts";
import { coreUnderSkin } from "../called.ts";
import type { Colour, Metal } from "../metal.ts";
import { computedBy } from "../provenance.ts";
import type { WorthTable } from "../worth-table.ts";
import type { DensityInterval } from "./binary-mixtures.ts";
import type { CoreAndSkin } from "./core-and-skin.ts";

/** What the eye takes for the same: shades of white, and shades of gold. */
const appearance: Readonly<Record<Colour, "white" | "gold" | "copper">> = {
  white: "white",
  grey: "white",
  yellow: "gold",
  "greenish-yellow": "gold",
  "reddish-yellow": "gold",
  pink: "gold",
  red: "copper",
  "reddish-grey": "copper",
};

/** True when the skin has the colour a buyer of the claim expects to see. */
export function skinLooksLike(skin: Metal, claimed: Metal): boolean {
  return appearance[skin.colour] === appearance[claimed.colour];
}

/**
 * A cored piece must save at least this share of the claim's worth before anybody goes to the trouble, and of the skin's
 * where that is dearer than the core: else it is as good as solid (common practice).
 */
const leastSaving = 0.05;

/** True when the cheapest piece of the kind is worth clearly less than the claim, and less than its skin all through. */
export function piecePays(piece: CoreAndSkin, claimed: Metal, table: WorthTable): boolean {
  const { core, skin } = piece;
  const worths = piece.skinShare.map((share) => {
    const mass = massShareOfSkin(core, skin, share);
    return mass * worthPerGram(skin, table) + (1 - mass) * worthPerGram(core, table);
  });
  const [ofSkin, ofCore] = [worthPerGram(skin, table), worthPerGram(core, table)];
  const solid = ofSkin > ofCore ? ofSkin : Number.POSITIVE_INFINITY;
  return Math.min(...worths) < Math.min(worthPerGram(claimed, table), solid) * (1 - leastSaving);
}

function massShareOfSkin(core: Metal, skin: Metal, volumeShare: number): number {
  const skinMass = volumeShare * skin.densityGPerCm3.nominal;
  return skinMass / (skinMass + (1 - volumeShare) * core.densityGPerCm3.nominal);
}

const byVolumes = computedBy("core-and-skin");
const computed = { composition: byVolumes, nominal: byVolumes, low: byVolumes, high: byVolumes };

/** A cored piece as a metal: sound goes through the core, colour is the skin's, conductivity is left open. */
export function pieceAsMetal(piece: CoreAndSkin, interval: DensityInterval): Metal {
  const { core, skin } = piece;
  const share = (piece.skinShare[0] + piece.skinShare[1]) / 2;
  const skinFraction = massShareOfSkin(core, skin, share);
  const composition: Record<string, readonly [number, null, null]> = {};
  for (const [body, of] of [
    [core, 1 - skinFraction],
    [skin, skinFraction],
  ] as const)
    for (const symbol of Object.keys(body.composition))
      composition[symbol] = [(composition[symbol]?.[0] ?? 0) + of * body.composition[symbol]![0], null, null];
  return {
    id: piece.id,
    made: coreUnderSkin(core, skin),
    family: "cored-and-plated",
    composition,
    densityGPerCm3: { nominal: (interval[0] + interval[1]) / 2, low: interval[0], high: interval[1] },
    expansionPerMillionK: null,
    magnetism: core.magnetism,
    conductivityIacsPercent: null,
    soundMPerS: soundThrough(core)?.mPerS ?? null,
    elasticModulusGPa: null,
    poissonRatio: null,
    colour: skin.colour,
    likelihood: piece.likelihood,
    provenance: computed,
    otherDensities: [],
    notes: [],
  };
}
