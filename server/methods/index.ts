import { z } from "zod";
import { keysOf } from "../../calibration/keyed.ts";
import { dimensions } from "./dimensions.ts";
import { displaced } from "./displaced.ts";
import { flask } from "./flask.ts";
import { hung } from "./hung.ts";
import type { Method as AnyMethod, StatedLine } from "./method.ts";

/** Every way to weigh, by its name. To add one: write its file, and name it here. */
const all = { hung, displaced, flask, dimensions };

export type MethodName = keyof typeof all;
type Named = (typeof all)[MethodName];

/** A reading that a method needs. */
export type NeededRole = Named["loads"][number]["role"];
/** Readings that every method may hold beside those it needs: the balance with the load away, and the piece dried again. */
export const rolesBeside = ["zero", "dry-after"] as const;
/** What a captured reading stands for in its method. */
export type Role = NeededRole | (typeof rolesBeside)[number];

export type Method = AnyMethod<MethodName, NeededRole>;
export const methods: Readonly<Record<MethodName, Method>> = all;
export const methodNames = keysOf(all);
/** Methods by which a lot can be screened. */
export const screeningMethods = methodNames.filter((name) => methods[name].screensLots);
/** Methods whose uncertainty can be foreseen. */
export const plannedMethods = methodNames.filter((name) => methods[name].plan !== undefined);
/** The way of a piece opened before its entry named one. */
export const firstMethod: MethodName = "hung";

/** The roles of a method's readings, in the order they are taken, dry first. */
export function rolesOf(name: MethodName): readonly NeededRole[] {
  return methods[name].loads.map(({ role }) => role);
}

export const roles = [
  ...new Set([...methodNames.flatMap(rolesOf), ...rolesBeside]),
] as readonly Role[] as readonly [Role, ...Role[]];

/** True for the name of a way to weigh. */
function isMethod(text: string): text is MethodName {
  return Object.hasOwn(methods, text);
}

/** True for a reading that the method may hold; one under another role belongs to another method. */
export function takes(name: MethodName, role: Role): boolean {
  return [...rolesOf(name), ...rolesBeside].includes(role);
}

/** The method a compute request that was kept names; undefined for one that is not known. */
export function methodNamed(request: object): Method | undefined {
  const name = String(Reflect.get(request, "method"));
  return isMethod(name) ? methods[name] : undefined;
}

/** What the method's own form states in a compute request that was kept, line by line. */
export function statedIn(request: object): readonly StatedLine[] {
  const form = methodNamed(request)?.form;
  return form ? form.lines(Object(Reflect.get(request, form.key))) : [];
}

/** The plain readings of each load in a compute request that was kept, by role; a load it does not hold is left out. */
export function readingsIn(request: object): { role: NeededRole; readings: string[]; unit: string }[] {
  return (methodNamed(request)?.loads ?? []).flatMap(({ role, key }) => {
    const found = plainSeries.safeParse(key.reduce<unknown>((within, one) => Object(within)[one], request));
    return found.success ? [{ role, ...found.data }] : [];
  });
}

const plainSeries = z.object({ readings: z.array(z.string()), unit: z.string().default("g") });
