import type { MassUnit } from "../../../calibration/units.ts";
import type { Chance } from "./seeded-random.ts";

/** One line format of a balance that does not exist. Everything about it is drawn by lot. */
export interface InventedFormat {
  unit: { unit: MassUnit; word: string; where: "after" | "before" | "nowhere" | "after-when-steady" };
  decimals: number;
  field: {
    width: number | null;
    fill: " " | "0";
    align: "right" | "left";
    sign: "pinned-left" | "beside-digits";
    plus: boolean;
    mark: "." | "," | "implied";
    auxiliary: boolean;
    /** mark of thousands */
    grouping: "" | "," | "." | "'";
    /** the minus sign of text, U+2212, as UTF-8 */
    longMinus: boolean;
    /** a small negative number that rounds to nothing keeps its sign */
    negativeZero: boolean;
    /** above so many steps the last decimal is not shown; 0 for never */
    coarseAbove: number;
  };
  /** dashes in the place of the number while it moves */
  blindWhileMoving: boolean;
  /** the line carries a tare weight, too */
  tareBehind: boolean;
  clock: boolean;
  /** a third mark, for rest that is not yet sure */
  third: string;
  /** flow control bytes slip through */
  flowBytes: boolean;
  /** sends only when its key is pressed */
  onKey: boolean;
  /** where the state stands, and what it says */
  state: {
    where: "nowhere" | "before" | "after" | "unit" | "both" | "own-line";
    steady: string;
    moving: string;
    steady2: string;
    moving2: string;
  };
  head: string;
  gap: string;
  tail: string;
  zeroMark: string;
  counter: boolean;
  /** filled up with blanks to this length */
  total: number | null;
  frame: { start: string; end: string };
  check: "none" | "xor-byte" | "xor-hex" | "sum-byte" | "sum-hex" | "zero-hex";
  lineEnd: string;
  parity: "none" | "even" | "odd" | "mark";
  /** the lines of one reading */
  block: ("weight" | "state" | "gross" | "tare" | "time" | { label: string })[];
  /** a label line after so many readings; 0 for none */
  labelEvery: number;
  overload: string;
  linesPerSecond: number;
  /** share of lines spoiled on the way */
  noise: number;
}

const letters = [..."ABCDEFHIJKLMOPQRSTUVWXYZ"];
const signs = ["?", "*", "!", "~", "#", "=", ":", "<", ">", "/"];

function word(by: Chance, length: number): string {
  const text = Array.from({ length }, () => by.pick(letters)).join("");
  return by.yes(0.2) ? text.toLowerCase() : text;
}

const token = (by: Chance, length: number) =>
  length === 1 && by.yes(0.5) ? by.pick(signs) : word(by, length);

/** Two different marks; one of them may be blanks, and now and then they differ in length. */
function vocabulary(by: Chance): [string, string] {
  if (by.yes(0.08))
    return by.pick([
      ["0", "1"],
      ["1", "0"],
      ["00", "10"],
    ] as [string, string][]);
  if (by.yes(0.05))
    return by.pick([
      ["==", "--"],
      ["=", "-"],
      ["+", "~"],
    ] as [string, string][]);
  const length = by.pick([1, 1, 2, 2, 3]);
  const steady = token(by, length);
  let moving = token(by, by.yes(0.15) ? length + 1 : length);
  while (moving === steady) moving = token(by, length);
  if (by.yes(0.25)) return [" ".repeat(length), moving.padEnd(length).slice(0, length)];
  if (by.yes(0.2)) return [steady, " ".repeat(length)];
  return [steady, moving];
}

const units: readonly [MassUnit, string][] = [
  ["g", "g"],
  ["g", "g"],
  ["g", "g"],
  ["kg", "kg"],
  ["mg", "mg"],
  ["ct", "ct"],
  ["ozt", "ozt"],
  ["dwt", "dwt"],
];

const placesOf = (by: Chance, unit: MassUnit) =>
  unit === "mg" ? by.whole(0, 2) : unit === "kg" ? by.whole(4, 6) : by.whole(1, 4);

export function inventedFormat(by: Chance): InventedFormat {
  const [unit, unitWord] = by.pick(units);
  const stateWhere = by.pick([
    "nowhere",
    "before",
    "before",
    "after",
    "after",
    "unit",
    "both",
    "own-line",
  ] as const);
  const [steady, moving] = vocabulary(by);
  const [steady2, moving2] = vocabulary(by);
  let third = token(by, Math.max(1, steady.length));
  while (third === steady || third === moving) third = token(by, third.length);
  const width = by.yes(0.7) ? by.whole(9, 12) : null;
  const implied = width !== null && by.yes(0.15);
  const decimals = placesOf(by, unit);
  const frame = by.pick([
    { start: "", end: "" },
    { start: "", end: "" },
    { start: "\x02", end: "\x03" },
    { start: "\x02", end: "" },
  ]);
  const check = by.yes(0.3)
    ? // A raw check byte may be any byte, also one that ends a line: only a closed frame can carry it.
      by.pick(
        frame.end === ""
          ? (["xor-hex", "sum-hex", "zero-hex"] as const)
          : (["xor-byte", "xor-hex", "sum-byte", "sum-hex", "zero-hex"] as const),
      )
    : "none";
  const lineEnd =
    frame.end !== "" && by.yes(0.5)
      ? ""
      : frame.start === "" && by.yes(0.1)
        ? "\x03"
        : by.pick(["\r\n", "\r\n", "\r\n", "\r", "\n", "\n\r"]);
  const silent = frame.start === "" && check === "none" && by.yes(0.1);
  const unitWhere =
    stateWhere === "unit"
      ? "after-when-steady"
      : by.pick(["after", "after", "after", "after", "before", "nowhere"] as const);
  const head = by.yes(0.35)
    ? by.pick([`${word(by, 2)},`, `${word(by, 1)} `, `${word(by, 3)}:`, `${word(by, 2)} `])
    : "";
  const block: InventedFormat["block"] = ["weight"];
  if (stateWhere === "own-line") block.splice(by.pick([0, 1]), 0, "state");
  if (by.yes(0.12)) block.unshift("gross", "tare");
  if (by.yes(0.1)) block.unshift("time");
  if (by.yes(0.1)) block.push({ label: word(by, 6) });
  const mark = implied ? "implied" : by.yes(0.2) ? "," : ".";
  const grouped = !implied && by.yes(0.1);
  const parity = by.yes(0.25) ? by.pick(["even", "odd", "mark"] as const) : "none";
  const fill = !implied && (width === null || by.yes(0.8)) ? " " : "0";
  return {
    unit: { unit, word: unitWord, where: unitWhere },
    decimals,
    field: {
      width,
      fill,
      align: width !== null && fill === " " && by.yes(0.2) ? "left" : "right",
      sign: by.yes(0.5) ? "pinned-left" : "beside-digits",
      plus: by.yes(0.5),
      mark,
      grouping: grouped && fill === " " ? (mark === "." ? by.pick([",", "'"]) : ".") : "",
      longMinus: parity === "none" && check === "none" && by.yes(0.05),
      negativeZero: by.yes(0.3),
      coarseAbove: !implied && decimals > 1 && by.yes(0.06) ? 1000 : 0,
      auxiliary: !implied && decimals > 1 && by.yes(0.08),
    },
    state: {
      where: silent && stateWhere === "own-line" ? "nowhere" : stateWhere,
      steady,
      moving,
      steady2,
      moving2,
    },
    head,
    gap: by.pick(["", " ", " ", "  "]),
    tail: by.yes(0.2) ? by.pick([" ", "  ", ";", ","]) : "",
    zeroMark: by.yes(0.15) ? token(by, 1) : "",
    counter: by.yes(0.08),
    total: by.yes(0.15) ? 36 : null,
    frame,
    check,
    lineEnd: silent ? "" : lineEnd,
    parity,
    blindWhileMoving: by.yes(0.04),
    tareBehind: by.yes(0.05),
    clock: by.yes(0.06),
    third: by.yes(0.12) ? third : "",
    flowBytes: !silent && frame.end === "" && check === "none" && by.yes(0.06),
    onKey: !silent && by.yes(0.06),
    block: silent ? ["weight"] : block,
    labelEvery: !silent && by.yes(0.15) ? by.whole(1, 7) : 0,
    overload: by.pick(["  OVER   ", "^^^^^^^", "-------", "Err 4", word(by, 5)]),
    linesPerSecond: silent ? by.pick([2, 4, 5]) : by.pick([1, 2, 4, 5, 8, 10, 15, 20]),
    noise: by.yes(0.15) ? 0.01 : 0,
  };
}
