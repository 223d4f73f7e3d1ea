import { remembered } from "../../calibration/remembered.ts";
import type { Colour, Metal } from "../metals/metal.ts";
import { type WorthTable, worthOf } from "../metals/worth-table.ts";
import { couldLook, recipesOf } from "./evidence/appearance.ts";

/** Neither table nor metal ever changes, and every claim asks for all of them. */
const known = remembered((table: WorthTable) => remembered((metal: Metal) => worthOfShares(metal, table)));

/** Rough worth of a gram of the metal, in units of base metal. For comparing two metals, never for a price. */
export function worthPerGram(metal: Metal, table: WorthTable): number {
  return metal.made ? worthOfShares(metal, table) : known(table)(metal);
}

const worthOfShares = ({ composition }: Metal, table: WorthTable) =>
  Object.entries(composition).reduce((worth, [symbol, [share]]) => worth + share * worthOf(symbol, table), 0);

/** True when passing `other` off as `claimed` would pay: it is worth less, by more than the slack of a fineness. */
export function worthPassingOff(other: Metal, claimed: Metal, table: WorthTable): boolean {
  return worthPerGram(other, table) < worthPerGram(claimed, table) * 0.998;
}

/** Skins that are put on to look like something dearer, by the worth of their metal: silver, gold, copper. */
const skins: readonly { colour: Colour; element: string }[] = [
  { colour: "white", element: "Ag" },
  { colour: "yellow", element: "Au" },
  { colour: "red", element: "Cu" },
];

/** True when somebody would put a skin of the colour around it: the metal of such a skin is dearer (common practice). */
export function canBeCoatedAs(colour: Colour, metal: Metal, table: WorthTable): boolean {
  return skins.some(
    (skin) => couldLook(colour, skin.colour) && worthPerGram(metal, table) < worthOf(skin.element, table),
  );
}

const alike = remembered((table: WorthTable) =>
  remembered((claimed: Metal) => remembered((metal: Metal) => looksLike(metal, claimed, table))),
);

/** True when a piece of the metal can look as the claim does, by its own colour or under a skin. */
export const canLookLike = (metal: Metal, claimed: Metal, table: WorthTable): boolean =>
  alike(table)(claimed)(metal);

function looksLike(metal: Metal, claimed: Metal, table: WorthTable): boolean {
  return recipesOf(claimed).some(({ colour }) =>
    recipesOf(metal).some(
      (recipe) => couldLook(colour, recipe.colour) || canBeCoatedAs(colour, recipe, table),
    ),
  );
}
