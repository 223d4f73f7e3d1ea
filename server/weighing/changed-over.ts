import { type Role, rolesOf } from "../methods/index.ts";
import { type Capture, type Piece, standing } from "./piece.ts";
import { Refusal } from "./refusal.ts";

/**
 * The dry and the wet readings that stand in each other's boxes, each with the role it is given instead; hung or with
 * the beaker on the pan. Throws Refusal when one of the two is missing or the method has more than two.
 */
export function changedOver(piece: Piece): { capture: Capture; role: Role }[] {
  const [first, wet, ...more] = rolesOf(piece.method);
  if (first !== "dry" || wet === undefined || more.length > 0)
    throw new Refusal("Only two readings can be changed over, and this method takes three.");
  const dry = standing(piece, "dry");
  const other = standing(piece, wet);
  if (dry.length === 0 || other.length === 0)
    throw new Refusal("There is nothing to change over: the dry or the wet reading is missing.");
  return [
    ...dry.map((capture) => ({ capture, role: wet })),
    ...other.map((capture) => ({ capture, role: "dry" as const })),
  ];
}
