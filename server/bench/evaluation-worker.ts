import { parentPort } from "node:worker_threads";
import { evaluationOf } from "./evaluation.ts";

/** The thread in which evaluations run: a Monte Carlo of some milliseconds must not hold up a live reading. */
parentPort?.on("message", ({ id, request }: { id: number; request: unknown }) => {
  parentPort?.postMessage({ id, evaluation: evaluationOf(request) });
});
