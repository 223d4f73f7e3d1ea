import { type Message, message } from "../../../calibration/message.ts";
import { type MethodName, methodNames, methods } from "../../methods/index.ts";
import type { PlannedWeighing } from "./planned-weighing.ts";

/** One change that would let the weighing decide. */
export interface Remedy {
  kind: "readability" | "method" | "pieces" | "mass";
  /** g for readability and mass, a count for pieces, a name for the method */
  value: number | MethodName;
  says: Message;
}

const finerSteps = [0.1, 0.01, 0.001, 0.0001, 0.00001];
const counts = [2, 3, 5, 10, 20, 50];
const heavier = [1.5, 2, 3, 5, 10, 20, 50, 100, 500];

/**
 * Of each kind the smallest change that decides, as far as one exists: a finer scale, the other method, more like pieces,
 * a heavier piece. `decides` tells whether a weighing leaves nothing that density could exclude.
 */
export function remedies(weighing: PlannedWeighing, decides: (other: PlannedWeighing) => boolean): Remedy[] {
  const found: Remedy[] = [];
  const step = finerSteps.find((d) => d < weighing.readabilityG * 0.99 && decides(onFinerScale(weighing, d)));
  if (step !== undefined)
    found.push({
      kind: "readability",
      value: step,
      says: message("plan.remedy.readability", { step_g: step }),
    });
  const others = methodNames.filter((name) => methods[weighing.method].plan?.others.includes(name));
  const method = others.find((way) => decides({ ...weighing, method: way }));
  const says = method && methods[method].plan?.insteadSays;
  if (method && says) found.push({ kind: "method", value: method, says });
  const times = counts.find((n) => decides({ ...weighing, pieces: weighing.pieces * n }));
  if (times !== undefined)
    found.push({
      kind: "pieces",
      value: weighing.pieces * times,
      says: message("plan.remedy.pieces", { n: weighing.pieces * times }),
    });
  const mass = heavier.find((n) => decides({ ...weighing, massG: weighing.massG * n }));
  if (mass !== undefined) {
    const grams = +(weighing.massG * mass).toPrecision(2);
    found.push({ kind: "mass", value: grams, says: message("plan.remedy.mass", { mass_g: grams }) });
  }
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
