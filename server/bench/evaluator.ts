import { Worker } from "node:worker_threads";
import type { Evaluate, Evaluation } from "./evaluation.ts";

/** A worker thread that evaluates, one request after another. */
export interface Evaluator {
  evaluate: Evaluate;
  close(): Promise<void>;
}

/** The thread runs from the build; where the source itself runs, it registers the TypeScript loader first. */
function startWorker(): Worker {
  if (!import.meta.url.endsWith(".ts")) return new Worker(new URL("./evaluation-worker.js", import.meta.url));
  const source = new URL("./evaluation-worker.ts", import.meta.url).href;
  return new Worker(
    `import("tsx/esm/api").then(({ register }) => { register(); return import("${source}"); })`,
    { eval: true },
  );
}

/** Starts the thread. When it dies, what was asked of it is rejected with its reason. */
export function createEvaluator(): Evaluator {
  const worker = startWorker();
  worker.unref();
  const waiting = new Map<number, { resolve: (e: Evaluation) => void; reject: (e: Error) => void }>();
  let asked = 0;
  worker.on("message", ({ id, evaluation }: { id: number; evaluation: Evaluation }) => {
    waiting.get(id)?.resolve(evaluation);
    waiting.delete(id);
  });
  worker.on("error", (error: Error) => {
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  });
  return {
    evaluate: (request) =>
      new Promise((resolve, reject) => {
        asked += 1;
        waiting.set(asked, { resolve, reject });
        worker.postMessage({ id: asked, request });
      }),
    close: async () => {
      await worker.terminate();
    },
  };
}
