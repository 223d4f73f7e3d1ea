import type { DecimalMark } from "../../../calibration/typed-number.ts";

/** Cells that can only be read with this decimal mark: one or two decimals, four and more, or thousands before them. */
const onlyWith = (mark: DecimalMark, group: DecimalMark) =>
  new RegExp(
    `^[+\\-−–]?(0*\\${mark}\\d+|\\d+\\${mark}(\\d{1,2}|\\d{4,})|\\d{1,3}(\\${group}\\d{3})+\\${mark}\\d+)$`,
  );

const comma = onlyWith(",", ".");
const point = onlyWith(".", ",");

/** The decimal mark that the cells of a list show; undefined where they show none, or both. */
export function markOf(cells: readonly string[]): DecimalMark | undefined {
  const plain = cells.map((cell) => cell.replace(/\s*[^\d.,]*$/u, "").trim());
  const commas = plain.some((cell) => comma.test(cell));
  const points = plain.some((cell) => point.test(cell));
  if (commas === points) return undefined;
  return commas ? "," : ".";
}
