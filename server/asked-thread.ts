import { Worker } from "node:worker_threads";

/** A thread that answers questions, each with its number, in any order. */
export interface AskedThread<Question, Answer> {
  /** Rejects when the thread dies before it answers; the next question starts another. */
  ask(question: Question): Promise<Answer>;
  /** Ends it; what was not answered is rejected. */
  close(): Promise<void>;
}

/** Starts the built thread of this name, or, where the program runs from its sources, the file beside the asking one. */
export function startThread(name: string, askedBy: string): Worker {
  if (!askedBy.endsWith(".ts")) return new Worker(new URL(`./${name}.js`, askedBy));
  // from source: a thread gets no TypeScript loader from its parent, so it registers one and then loads the file
  const file = new URL(`./${name}.ts`, askedBy).href;
  const start = `import("tsx/esm/api").then(({ register }) => { register(); return import("${file}"); })`;
  return new Worker(start, { eval: true });
}

/** Opens the thread at the first question; `called` names it in the error of one that dies. */
export function askedThread<Question extends object, Answer extends { number: number }>(
  called: string,
  start: () => Worker,
): AskedThread<Question, Answer> {
  const waiting = new Map<number, { resolve(answer: Answer): void; reject(error: Error): void }>();
  let worker: Worker | undefined;
  let last = 0;

  function lost(error: Error): void {
    worker = undefined;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  }

  function open(): Worker {
    const opened = start();
    opened.on("message", (answer: Answer) => {
      waiting.get(answer.number)?.resolve(answer);
      waiting.delete(answer.number);
      // an idle thread does not keep the program alive
      if (waiting.size === 0) opened.unref();
    });
    opened.on("error", lost);
    opened.on("exit", (code) => {
      if (worker === opened)
        lost(new Error(`${called} ended with code ${code} before it answered. Ask again.`));
    });
    return opened;
  }

  return {
    ask(question) {
      worker ??= open();
      const asked = worker;
      const number = ++last;
      return new Promise((resolve, reject) => {
        waiting.set(number, { resolve, reject });
        asked.ref();
        asked.postMessage({ ...question, number });
      });
    },
    async close() {
      const closing = worker;
      worker = undefined;
      await closing?.terminate();
      for (const { reject } of waiting.values()) reject(new Error("The bench is closing."));
      waiting.clear();
    },
  };
}
