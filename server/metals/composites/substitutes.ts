import { worthPassingOff } from "../../conformity/worth.ts";
import { builtIn, type Library } from "../library.ts";
import type { Metal } from "../metal.ts";
import { type DensityInterval, knownMixtures } from "./binary-mixtures.ts";
import { knownCoreAndSkins } from "./core-and-skin.ts";
import { pieceAsMetal, piecePays, skinLooksLike } from "./cored-piece.ts";
import { mixtureAsMetal } from "./mixture-as-metal.ts";

/** A made-up piece that reaches the density and would pay, written as a metal. */
export interface Substitute {
  kind: "mixture" | "core-and-skin";
  as: Metal;
}

/**
 * The mixtures and cored pieces worth making for a claim within a density interval (g/cm³ at 20 °C): somebody is known
 * to make them, they look the part, and they are worth less than the claim. One of the cored pieces for each core; an
 * owner's metals are among the cores and skins.
 */
export function substitutes(
  interval: DensityInterval,
  claimed: Metal,
  library: Library = builtIn,
): Substitute[] {
  const mixtures = knownMixtures(interval)
    .filter(({ likelihood }) => likelihood !== "rare")
    .map((mixture) => mixtureAsMetal(mixture, interval))
    .filter((m) => worthPassingOff(m, claimed, library.worth))
    .map((as): Substitute => ({ kind: "mixture", as }));
  const seen = new Set<string>();
  const cored = knownCoreAndSkins(interval, library, (skin) => skinLooksLike(skin, claimed))
    .filter((piece) => piecePays(piece, claimed, library.worth))
    .filter(({ core: { id } }) => !seen.has(id) && seen.add(id))
    .map((piece): Substitute => ({ kind: "core-and-skin", as: pieceAsMetal(piece, interval) }));
  return [...mixtures, ...cored];
}
