import { longRun } from "../setup/long-run.ts";
import { type Scale, scales } from "./benches.ts";
import { customer } from "./claims.ts";
import { type Measured, type MeasurementClass, measured } from "./coverage.ts";
import type { Method } from "./weighing.ts";

/** The coverage every interval states. */
export const stated = 0.9545;

export const methods: readonly Method[] = ["hung", "displaced", "flask"];

/** Single weighings of one method on one balance, each under a customer's claim. */
export interface Cell {
  method: Method;
  scale: Scale;
  all: Measured[];
}

/** Repeated weighings: how often, and what was found. */
export interface Repeated {
  of: MeasurementClass;
  all: Measured[];
}

/**
 * By night 12 × 1700 single weighings. A share counted over 5000 of them scatters by 0.3 %, so a class of one method, scale or
 * range of masses shows a coverage of 95.45 % between 94.5 and 97 % with more than three standard deviations to spare.
 */
export const perCell = longRun(1700);

const repeatedClasses: readonly (MeasurementClass & { seed: number })[] = [
  { method: "hung", scale: "0.1 mg", repeats: 3, count: longRun(400), seed: 200 },
  { method: "displaced", scale: "0.01 g", repeats: 3, count: longRun(400), seed: 203 },
  { method: "flask", scale: "0.1 g", repeats: 3, count: longRun(400), seed: 204 },
  // from four repeats on an interval takes several times as long to compute
  { method: "hung", scale: "0.01 g", repeats: 5, count: longRun(100, 20), seed: 201 },
];

/** All weighings of the virtual bench, with fixed seeds. */
export async function everything(): Promise<{ cells: Cell[]; repeated: Repeated[] }> {
  const cells: Cell[] = [];
  for (const [row, method] of methods.entries())
    for (const [column, scale] of scales.entries()) {
      const of: MeasurementClass = { method, scale, repeats: 1, count: perCell };
      cells.push({ method, scale, all: await measured(of, 100 + 10 * row + column, customer) });
    }
  const repeated: Repeated[] = [];
  for (const of of repeatedClasses) repeated.push({ of, all: await measured(of, of.seed) });
  return { cells, repeated };
}

/** Which weighings a class holds. */
export type Keep = (cell: Cell, one: Measured) => boolean;

/** The classes whose coverage is judged: every method, every scale, light to heavy pieces, light and dense metals. */
export const classes: readonly [name: string, keep: Keep][] = [
  ...methods.map((method): [string, Keep] => [method, (cell) => cell.method === method]),
  ...scales.map((scale): [string, Keep] => [`readability ${scale}`, (cell) => cell.scale === scale]),
  ["pieces of 1 to 30 g", (_, { piece }) => piece.grams < 30],
  ["pieces of 30 to 150 g", (_, { piece }) => piece.grams >= 30 && piece.grams < 150],
  ["pieces of 150 g to 1 kg", (_, { piece }) => piece.grams >= 150],
  ["silver and base metal, below 12 g/cm³", (_, { piece }) => piece.gPerCm3 < 12],
  ["gold, platinum and tungsten, above 12 g/cm³", (_, { piece }) => piece.gPerCm3 >= 12],
];

export function those(cells: readonly Cell[], keep: Keep): Measured[] {
  return cells.flatMap((cell) => cell.all.filter((one) => keep(cell, one)));
}

/** Shares of the states among genuine pieces and fakes. */
export interface Findings {
  genuine: number;
  genuineDisagrees: number;
  fakes: number;
  fakesAgrees: number;
  fakesDisagrees: number;
}

export function findings(all: readonly Measured[]): Findings {
  const genuine = all.filter(({ told }) => told?.genuine);
  const fakes = all.filter(({ told }) => told && !told.genuine);
  const share = (of: readonly Measured[], state: string) =>
    of.filter(({ answer }) => answer.conformity.state === state).length / of.length;
  return {
    genuine: genuine.length,
    genuineDisagrees: share(genuine, "excluded"),
    fakes: fakes.length,
    fakesAgrees: share(fakes, "consistent"),
    fakesDisagrees: share(fakes, "excluded"),
  };
}
