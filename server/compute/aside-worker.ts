import { parentPort } from "node:worker_threads";
import { planFor } from "../conformity/plan/plan.ts";
import { libraryWith } from "../metals/own-metals.ts";
import type { Answer, Question } from "./aside.ts";
import { compute } from "./compute.ts";
import { evaluationOf } from "./evaluation.ts";

function answer(question: Question): Answer {
  const { number } = question;
  if (question.kind === "compute")
    return { number, computed: compute(question.request, libraryWith(question.own)) };
  if (question.kind === "evaluate")
    return { number, evaluated: evaluationOf(question.request, question.own) };
  try {
    return { number, planned: planFor(question.weighing, libraryWith(question.own)) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { number, refused: error.message };
  }
}

parentPort?.on("message", (question: Question) => parentPort?.postMessage(answer(question)));
