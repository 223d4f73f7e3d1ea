import { type Code, message, type Param } from "../../calibration/message.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { principal } from "./alternative.ts";
import type { NotExcluded } from "./conformity.ts";

/** What false pieces are mostly made of, by the plain names a counter uses (common practice); asked about in this order. */
export const plainNames: Readonly<Record<string, Code>> = {
  "el-cu": "plan.plain-name.el-cu",
  "brass-c260": "plan.plain-name.brass-c260",
  nisilver: "plan.plain-name.nisilver",
  "cuni-25": "plan.plain-name.cuni-25",
  "el-pb": "plan.plain-name.el-pb",
  "w-pure": "plan.plain-name.w-pure",
  "steel-c": "plan.plain-name.steel-c",
  "ag-999": "plan.plain-name.ag-999",
};

/** Those that an answer names, without the ones a customer would not think of. */
const coarse = ["el-cu", "brass-c260", "el-pb", "w-pure", "steel-c", "ag-999"];
/** So many are named. */
const named = 2;

/**
 * Plain metals that a piece is not: nearest first to the density it has or is claimed to have, of none of which anything
 * is left that somebody did not make for it.
 */
export function plainlyNot(gPerCm3: number, notExcluded: readonly NotExcluded[], library: Library): Param[] {
  const left = new Set(notExcluded.map(({ metal }) => metal.id));
  const mainly = new Set(
    notExcluded
      .filter(({ occurrence }) => occurrence !== "purpose-made")
      .map(({ metal }) => principal(metal)),
  );
  const away = (m: Metal) => Math.abs(Math.log(m.densityGPerCm3.nominal / gPerCm3));
  return coarse
    .filter((id) => library.has(id) && !left.has(id))
    .map((id) => library.metal(id))
    .filter((m) => !mainly.has(principal(m)))
    .sort((a, b) => away(a) - away(b))
    .slice(0, named)
    .map(({ id }) => message(plainNames[id]!));
}
