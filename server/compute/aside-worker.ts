import { parentPort } from "node:worker_threads";
import { measure } from "../../calibration/measure.ts";
import { seededRandom } from "../../calibration/random.ts";
import { Refusal } from "../../calibration/refusals.ts";
import { planFor } from "../conformity/plan/plan.ts";
import { libraryWith } from "../metals/own-metals.ts";
import type { Answer, Question } from "./aside.ts";
import { compute, fixedSeed } from "./compute.ts";
import { evaluationOf } from "./evaluation.ts";

function answer(question: Question): Answer {
  const { number } = question;
  if (question.kind === "compute")
    return { number, computed: compute(question.request, libraryWith(question.own)) };
  if (question.kind === "evaluate")
    return { number, evaluated: evaluationOf(question.request, question.own) };
  try {
    if (question.kind === "plan")
      return { number, planned: planFor(question.weighing, libraryWith(question.own)) };
    return { number, measured: measure(question.measurement, seededRandom(fixedSeed)) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const about = error instanceof Refusal ? error.about : null;
    return { number, refused: { about, message: error.message } };
  }
}

parentPort?.on("message", (question: Question) => parentPort?.postMessage(answer(question)));
