import { open } from "node:fs/promises";
import { createInterface } from "node:readline";
import { Refusal } from "../../calibration/refusal.ts";
import { errorFacts } from "../../drivers/port-error.ts";
import { type Addend, totalOf } from "../compute/total.ts";
import type { Answering } from "./answered-line.ts";
import { answersInOrder } from "./answers-in-order.ts";
import { command } from "./command.ts";

const usage = {
  name: "compute",
  options: { total: { type: "boolean", default: false } },
  takesArguments: true,
} as const;

/** `underhook compute [FILE]`: 0 when every line could be computed, 1 when one could not, 2 for a wrong call. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values: { total }, positionals, say }) => {
    const [file, more] = positionals.filter((one) => one !== "-");
    if (more !== undefined) throw new Refusal("cli.argument-unknown", { argument: more });
    // the reader has enough: a closed pipe ends quietly
    process.stdout.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code !== "EPIPE") throw error;
      process.exit(0);
    });
    return answerAll(await inputOf(file), { locale: say.locale, total });
  });

/** The lines of a file, or of standard input. Throws Refusal for a file that cannot be read. */
async function inputOf(file: string | undefined): Promise<NodeJS.ReadableStream> {
  if (file === undefined) return process.stdin;
  try {
    return (await open(file)).createReadStream();
  } catch (error) {
    throw new Refusal("cli.compute.unreadable", { file, reason: errorFacts(error).message });
  }
}

async function answerAll(input: NodeJS.ReadableStream, answering: Answering): Promise<number> {
  const addends: Addend[] = [];
  let items = 0;
  let status = 0;
  const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
  for await (const { text, failed, addend } of answersInOrder(lines, answering)) {
    items++;
    if (failed) status = 1;
    if (addend) addends.push(addend);
    await written(`${text}\n`);
  }
  if (answering.total) await written(`${JSON.stringify({ total: totalOf(items, addends) })}\n`);
  return status;
}

/** Waits when the reader is slower than we are. */
function written(text: string): Promise<void> {
  return new Promise((resolve) => {
    if (process.stdout.write(text)) resolve();
    else process.stdout.once("drain", resolve);
  });
}
