import { Worker } from "node:worker_threads";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Instrument } from "../conformity/next-test.ts";
import type { Plan } from "../conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../conformity/plan/planned-weighing.ts";
import type { OwnMetals } from "../metals/own-metals.ts";
import type { NoReading, Statement } from "../weighing/statement-shape.ts";
import type { BenchKnows, Evaluation } from "./evaluation.ts";
import type { Refused } from "./refusal.ts";

export type Question = { number: number } & (
  | {
      kind: "compute";
      request: unknown;
      own: OwnMetals | undefined;
      owned: readonly Instrument[] | undefined;
    }
  | { kind: "evaluate"; request: unknown; knows: BenchKnows | undefined; own: OwnMetals | undefined }
  | { kind: "plan"; weighing: PlannedWeighing; own: OwnMetals | undefined }
);

/** What a request comes to. */
export type Computed = Statement | NoReading | Refused;

export type Answer = { number: number } & (
  | { computed: Computed }
  | { evaluated: Evaluation }
  | { planned: Plan }
  | { refused: Message & { at?: string } }
  | { failed: string }
);

interface Waiting {
  resolve(answer: Answer): void;
  reject(error: Error): void;
}

/** Evaluates measurements in a thread of its own, so that a Monte Carlo never holds up the live reading. */
export interface ComputeThread {
  /** As compute with the metals in force. */
  compute(request: unknown): Promise<Computed>;
  /** As evaluationOf: the answer with everything a page draws. */
  evaluate(request: unknown, knows?: BenchKnows): Promise<Evaluation>;
  /** As planFor with the metals in force; rejects with the same Refusal. */
  plan(weighing: PlannedWeighing): Promise<Plan>;
  close(): Promise<void>;
}

function startWorker(): Worker {
  if (!import.meta.url.endsWith(".ts")) return new Worker(new URL("./compute-worker.js", import.meta.url));
  // from source: a thread gets no TypeScript loader from its parent, so it registers one and then loads the file
  const file = new URL("./compute-worker.ts", import.meta.url).href;
  const start = `import("tsx/esm/api").then(({ register }) => { register(); return import("${file}"); })`;
  return new Worker(start, { eval: true });
}

/**
 * Opens the thread at the first question; a thread that dies is replaced at the next, its questions are rejected. `own`
 * gives the owner's metals in force, which `compute`, `evaluate` and `plan` take beside the built-in ones, `owned` the instruments it has.
 */
export function openComputeThread({
  start = startWorker,
  own = () => undefined,
  owned = () => undefined,
}: {
  start?: () => Worker;
  own?: () => OwnMetals | undefined;
  owned?: () => readonly Instrument[] | undefined;
} = {}): ComputeThread {
  const waiting = new Map<number, Waiting>();
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
        lost(new Error(`The computing thread ended with code ${code} before it answered. Ask again.`));
    });
    return opened;
  }

  function ask(question: Omit<Question, "number">): Promise<Answer> {
    worker ??= open();
    const asked = worker;
    const number = ++last;
    return new Promise((resolve, reject) => {
      waiting.set(number, { resolve, reject });
      asked.ref();
      asked.postMessage({ ...question, number });
    });
  }

  return {
    compute: async (request) => {
      const answer = await ask({ kind: "compute", request, own: own(), owned: owned() } as Omit<
        Question,
        "number"
      >);
      if ("computed" in answer) return answer.computed;
      throw new Error("The computing thread answered another question.");
    },
    evaluate: async (request, knows) => {
      const answer = await ask({
        kind: "evaluate",
        request,
        knows: { owned: owned(), ...knows },
        own: own(),
      } as Omit<Question, "number">);
      if ("evaluated" in answer) return answer.evaluated;
      throw new Error("The computing thread answered another question.");
    },
    plan: async (weighing) => {
      const answer = await ask({ kind: "plan", weighing, own: own() } as Omit<Question, "number">);
      if ("planned" in answer) return answer.planned;
      if ("failed" in answer) throw new Error(answer.failed);
      if (!("refused" in answer)) throw new Error("The computing thread answered another question.");
      const { code, params, at } = answer.refused;
      throw new Refusal(code, params, at);
    },
    close: async () => {
      const closing = worker;
      worker = undefined;
      await closing?.terminate();
      for (const { reject } of waiting.values()) reject(new Error("The bench is closing."));
      waiting.clear();
    },
  };
}
