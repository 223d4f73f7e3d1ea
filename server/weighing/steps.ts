import { type NeededRole, rolesOf } from "../methods/index.ts";
import { type Piece, standing } from "./piece.ts";

export type StepName = NeededRole | "water" | "record";

/** One line of the step list: which step, and whether it is done, due or later. Its words stand with the page. */
export interface Step {
  name: StepName;
  state: "done" | "due" | "later";
}

/** The steps of a piece's method in order, with exactly one due unless the piece is closed. */
export function stepsOf(piece: Piece): Step[] {
  const names: StepName[] = [...rolesOf(piece.method), "water", "record"];
  const done = (name: StepName) =>
    name === "record"
      ? piece.closed !== undefined
      : name === "water"
        ? piece.waterCelsius !== undefined
        : standing(piece, name).length > 0;
  const due = names.find((name) => !done(name));
  return names.map((name) => ({
    name,
    state: done(name) ? "done" : name === due ? "due" : "later",
  }));
}
