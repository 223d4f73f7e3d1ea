import { type Message, message } from "../../../calibration/message.ts";
import { type MethodName, methodNames, methods } from "../../methods/index.ts";
import type { PlannedWeighing } from "./planned-weighing.ts";

/** One change that would let the weighing decide. */
export interface Remedy {
  kind: "repeats" | "mass" | "pieces" | "method" | "readability";
  /** g for readability and mass, a count for repeats and pieces, a name for the method */
  value: number | MethodName;
  message: Message;
}

/** More immersions of one piece are no advice. */
export const mostRepeats = 30;
const immersions = [2, 3, 4, 6, 10, 20, mostRepeats];
const finerSteps = [0.1, 0.01, 0.001, 0.0001, 0.00001];
const counts = [2, 3, 5, 10, 20, 50];
const heavier = [1.5, 2, 3, 5, 10, 20, 50, 100, 500];

/** What each change says, at every door. */
export const saying = {
  repeats: (count: number) => message("conformity.would.repeats", { count }),
  mass: (grams: number) => message("conformity.would.mass", { mass_g: grams }),
  pieces: (count: number) => message("conformity.would.pieces", { count }),
  method: (name: MethodName) => methods[name].plan?.insteadSays,
  readability: (grams: number) => message("conformity.would.readability", { readability_g: grams }),
};

/** Other ways to weigh this piece, those that are offered in place of a method. */
export const othersOf = (name: MethodName): readonly MethodName[] =>
  methodNames.filter((other) => methods[name].plan?.others.includes(other));

/**
 * Of each kind the smallest change that decides, as far as one exists, in the order they are easy: more immersions, a
 * heavier piece or more like ones, another method, a finer scale. `decides` tells whether a weighing leaves nothing that
 * density could exclude.
 */
export function remedies(weighing: PlannedWeighing, decides: (other: PlannedWeighing) => boolean): Remedy[] {
  const { massG, pieces, readabilityG, repeats: now = 1 } = weighing;
  const found: Remedy[] = [];
  const repeats = immersions.find((n) => n > now && decides({ ...weighing, repeats: n }));
  if (repeats !== undefined)
    found.push({ kind: "repeats", value: repeats, message: saying.repeats(repeats) });
  const mass = heavier.find((n) => decides({ ...weighing, massG: massG * n }));
  if (mass !== undefined) {
    const grams = +(massG * mass).toPrecision(2);
    found.push({ kind: "mass", value: grams, message: saying.mass(grams) });
  }
  const times = counts.find((n) => decides({ ...weighing, pieces: pieces * n }));
  if (times !== undefined)
    found.push({ kind: "pieces", value: pieces * times, message: saying.pieces(pieces * times) });
  const method = othersOf(weighing.method).find((way) => decides({ ...weighing, method: way }));
  const sentence = method && saying.method(method);
  if (method && sentence) found.push({ kind: "method", value: method, message: sentence });
  const step = finerSteps.find((d) => d < readabilityG * 0.99 && decides(onFinerScale(weighing, d)));
  if (step !== undefined) found.push({ kind: "readability", value: step, message: saying.readability(step) });
  return found;
}

/** A finer scale repeats better in proportion; what bubbles and the meniscus do stays. */
function onFinerScale(weighing: PlannedWeighing, readabilityG: number): PlannedWeighing {
  const { repeatabilityG, immersedRepeatabilityG: _, ...rest } = weighing;
  const shrink = readabilityG / weighing.readabilityG;
  return {
    ...rest,
    readabilityG,
    ...(repeatabilityG === undefined ? {} : { repeatabilityG: repeatabilityG * shrink }),
  };
}
