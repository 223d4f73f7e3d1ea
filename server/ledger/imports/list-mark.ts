import type { DecimalMark } from "../../../calibration/typed-number.ts";

/** Cells that can only be read with this decimal mark: one or two decimals, four and more, or thousands before them. */
const onlyWith = (mark: DecimalMark, group: DecimalMark) =>
  new RegExp(
    `^[+\\-−–]?(0*\\${mark}\\d+|\\d+\\${mark}(\\d{1,2}|\\d{4,})|\\d{1,3}(\\${group}\\d{3})+\\${mark}\\d+)$`,
  );

const comma = onlyWith(",", ".");
const point = onlyWith(".", ",");

/** The decimal mark that cells show: what was seen so far, cell by cell. */
export class MarkSeen {
  #commas = false;
  #points = false;

  read(cell: string): void {
    const plain = cell.replace(/\s*[^\d.,]*$/u, "").trim();
    this.#commas ||= comma.test(plain);
    this.#points ||= point.test(plain);
  }

  /** undefined where they show none, or both */
  get mark(): DecimalMark | undefined {
    if (this.#commas === this.#points) return undefined;
    return this.#commas ? "," : ".";
  }
}
