import { availableParallelism } from "node:os";
import { setImmediate } from "node:timers/promises";
import { Piscina } from "piscina";
import { type AnsweredLine, type Answering, answeredLine } from "./answered-line.ts";

/** So many lines are answered before other threads are worth their start, about half a second each. */
const alone = 100;
/** Lines handed to a thread at once. */
const handful = 64;
/** Handfuls on their way for each thread: what is read and not yet written stays this small, however long the input. */
const ahead = 4;

/**
 * Answers lines over all cores and gives the answers in the order of the lines, at flat memory. Whoever sends one line and
 * waits gets its answer: a handful goes off as soon as no further line stands ready.
 */
export async function* answersInOrder(
  lines: AsyncIterable<string>,
  answering: Answering,
): AsyncGenerator<AnsweredLine> {
  const input = lines[Symbol.asyncIterator]();
  for (let read = 0; read < alone || fromSource; read++) {
    const { done, value } = await input.next();
    if (done) return;
    const answered = answeredLine(value, answering);
    if (answered) yield answered;
  }
  yield* byThreads(input, answering);
}

/** Threads load built files; from source everything is answered here. */
const fromSource = import.meta.url.endsWith(".ts");

async function* byThreads(input: AsyncIterator<string>, answering: Answering): AsyncGenerator<AnsweredLine> {
  const maxThreads = availableParallelism();
  const pool = new Piscina<unknown, AnsweredLine[]>({
    filename: new URL("./answering-thread.js", import.meta.url).href,
    // A thread that ended for want of work would have to be started anew for the next lines.
    minThreads: maxThreads,
    maxThreads,
  });
  const onTheirWay: Promise<AnsweredLine[]>[] = [];
  let lines: string[] = [];
  const deliver = () => {
    if (lines.length > 0) onTheirWay.push(pool.run({ lines, ...answering }));
    lines = [];
  };
  try {
    let coming = input.next();
    for (;;) {
      const first = onTheirWay[0];
      const next = await Promise.race([
        ...(onTheirWay.length < ahead * maxThreads ? [coming.then(() => "line" as const)] : []),
        ...(first ? [first.then(() => "answer" as const)] : []),
        ...(lines.length > 0 ? [setImmediate("idle" as const)] : []),
      ]);
      if (next === "answer") yield* await onTheirWay.shift()!;
      else if (next === "idle") deliver();
      else {
        const { done, value } = await coming;
        if (done) break;
        lines.push(value);
        if (lines.length === handful) deliver();
        coming = input.next();
      }
    }
    deliver();
    for (const answered of onTheirWay) yield* await answered;
  } finally {
    await pool.destroy();
  }
}
