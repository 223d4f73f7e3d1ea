import { message, type Param } from "../../calibration/message.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import type { NotExcluded } from "./conformity.ts";
import { kindOf } from "./group.ts";
import { plainNames } from "./plain-names.ts";

/** Those that an answer names, without the ones a customer would not think of. */
const coarse = ["el-cu", "brass-c260", "el-pb", "w-pure", "steel-c", "ag-999"];
/** So many are named. */
const named = 2;

/**
 * Plain metals that a piece is not: nearest first to the density it has or is claimed to have, none of a kind that
 * anything left is of.
 */
export function plainlyNot(gPerCm3: number, notExcluded: readonly NotExcluded[], library: Library): Param[] {
  const kinds = new Set(notExcluded.map(kindOf));
  const away = (m: Metal) => Math.abs(Math.log(m.densityGPerCm3.nominal / gPerCm3));
  return coarse
    .filter((id) => library.has(id))
    .map((id) => library.metal(id))
    .filter((metal) => !kinds.has(kindOf({ metal, occurrence: "common" })))
    .sort((a, b) => away(a) - away(b))
    .slice(0, named)
    .map(({ id }) => message(plainNames[id]!));
}
