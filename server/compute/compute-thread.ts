import type { Worker } from "node:worker_threads";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { askedThread, startThread } from "../asked-thread.ts";
import type { Instrument } from "../conformity/next-test.ts";
import type { Plan } from "../conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../conformity/plan/planned-weighing.ts";
import type { OwnMetals } from "../metals/own-metals.ts";
import type { NoReading, Statement } from "../weighing/statement-shape.ts";
import type { BenchKnows, Evaluation } from "./evaluation.ts";
import type { Refused } from "./refusal.ts";

/** What is asked, before it gets its number. */
type Asked =
  | {
      kind: "compute";
      request: unknown;
      own: OwnMetals | undefined;
      owned: readonly Instrument[] | undefined;
    }
  | { kind: "evaluate"; request: unknown; knows: BenchKnows | undefined; own: OwnMetals | undefined }
  | { kind: "plan"; weighing: PlannedWeighing; own: OwnMetals | undefined };

export type Question = { number: number } & Asked;

/** What a request comes to. */
export type Computed = Statement | NoReading | Refused;

export type Answer = { number: number } & (
  | { computed: Computed }
  | { evaluated: Evaluation }
  | { planned: Plan }
  | { refused: Message & { at?: string } }
  | { failed: string }
);

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

/**
 * Opens the thread at the first question; a thread that dies is replaced at the next, its questions are rejected. `own`
 * gives the owner's metals in force, which `compute`, `evaluate` and `plan` take beside the built-in ones, `owned` the instruments it has.
 */
export function openComputeThread({
  start = () => startThread("compute-worker", import.meta.url),
  own = () => undefined,
  owned = () => undefined,
}: {
  start?: () => Worker;
  own?: () => OwnMetals | undefined;
  owned?: () => readonly Instrument[] | undefined;
} = {}): ComputeThread {
  const { ask, close } = askedThread<Asked, Answer>("The computing thread", start);

  return {
    compute: async (request) => {
      const answer = await ask({ kind: "compute", request, own: own(), owned: owned() });
      if ("computed" in answer) return answer.computed;
      throw new Error("The computing thread answered another question.");
    },
    evaluate: async (request, knows) => {
      const answer = await ask({
        kind: "evaluate",
        request,
        knows: { owned: owned(), ...knows },
        own: own(),
      });
      if ("evaluated" in answer) return answer.evaluated;
      throw new Error("The computing thread answered another question.");
    },
    plan: async (weighing) => {
      const answer = await ask({ kind: "plan", weighing, own: own() });
      if ("planned" in answer) return answer.planned;
      if ("failed" in answer) throw new Error(answer.failed);
      if (!("refused" in answer)) throw new Error("The computing thread answered another question.");
      const { code, params, at } = answer.refused;
      throw new Refusal(code, params, at);
    },
    close,
  };
}
