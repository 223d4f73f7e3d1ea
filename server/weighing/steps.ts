import { methods, type NeededRole, rolesOf } from "../methods/index.ts";
import type { StepName } from "../methods/method.ts";
import { type Item, standing } from "./item.ts";
import { liquidTemperature } from "./sensed.ts";

/** One line of the step list: which step, and whether it is done, due or later. Its words stand with the page. */
export interface Step {
  name: StepName;
  /** the reading it takes; none where something is stated, or the record written */
  role?: NeededRole;
  state: "done" | "due" | "later";
}

/** The steps of a piece's method in order, with exactly one due unless the piece is closed. */
export function stepsOf(item: Item): Step[] {
  const { form, pieceTemperature } = methods[item.method];
  const names: StepName[] = [
    ...rolesOf(item.method),
    ...(form ? [form.step] : []),
    ...(pieceTemperature ? [] : (["water"] as const)),
    "record",
  ];
  const roles: readonly string[] = rolesOf(item.method);
  const isRole = (name: StepName): name is NeededRole => roles.includes(name);
  const done = (name: StepName) => {
    if (isRole(name)) return standing(item, name).length > 0;
    if (name === "record") return item.closed !== undefined;
    return name === "water" ? liquidTemperature(item) !== undefined : item.details.method !== undefined;
  };
  const due = names.find((name) => !done(name));
  return names.map((name) => ({
    name,
    ...(isRole(name) ? { role: name } : {}),
    state: done(name) ? "done" : name === due ? "due" : "later",
  }));
}
