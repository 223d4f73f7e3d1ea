import { methods, type NeededRole, rolesOf } from "../methods/index.ts";
import type { StepName } from "../methods/method.ts";
import { type Piece, standing } from "./piece.ts";

/** One line of the step list: which step, and whether it is done, due or later. Its words stand with the page. */
export interface Step {
  name: StepName;
  /** the reading it takes; none where something is stated, or the record written */
  role?: NeededRole;
  state: "done" | "due" | "later";
}

/** The steps of a piece's method in order, with exactly one due unless the piece is closed. */
export function stepsOf(piece: Piece): Step[] {
  const { form, pieceTemperature } = methods[piece.method];
  const names: StepName[] = [
    ...rolesOf(piece.method),
    ...(form ? [form.step] : []),
    ...(pieceTemperature ? [] : (["water"] as const)),
    "record",
  ];
  const roles: readonly string[] = rolesOf(piece.method);
  const isRole = (name: StepName): name is NeededRole => roles.includes(name);
  const done = (name: StepName) => {
    if (isRole(name)) return standing(piece, name).length > 0;
    if (name === "record") return piece.closed !== undefined;
    return name === "water" ? piece.waterCelsius !== undefined : piece.details.method !== undefined;
  };
  const due = names.find((name) => !done(name));
  return names.map((name) => ({
    name,
    ...(isRole(name) ? { role: name } : {}),
    state: done(name) ? "done" : name === due ? "due" : "later",
  }));
}
