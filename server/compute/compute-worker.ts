import { parentPort } from "node:worker_threads";
import { Refusal } from "../../calibration/refusal.ts";
import { planFor } from "../conformity/plan/plan.ts";
import { libraryWith } from "../metals/own-metals.ts";
import { compute } from "./compute.ts";
import type { Answer, Question } from "./compute-thread.ts";
import { evaluationOf } from "./evaluation.ts";

function answer(question: Question): Answer {
  const { number } = question;
  if (question.kind === "compute")
    return { number, computed: compute(question.request, libraryWith(question.own), question.owned) };
  if (question.kind === "evaluate")
    return { number, evaluated: evaluationOf(question.request, question.own, question.knows) };
  try {
    return { number, planned: planFor(question.weighing, libraryWith(question.own)) };
  } catch (error) {
    if (!(error instanceof Refusal))
      return { number, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
    const { code, params, at } = error;
    return { number, refused: { code, params, ...(at === undefined ? {} : { at }) } };
  }
}

parentPort?.on("message", (question: Question) => parentPort?.postMessage(answer(question)));
