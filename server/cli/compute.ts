import { createReadStream } from "node:fs";
import { createInterface } from "node:readline";
import { isError } from "../compute/compute.ts";
import { answerLine } from "../compute/lines.ts";

const usage = `underhook compute [FILE]

Reads JSON Lines, one weighing on each, from FILE or from standard input; writes one line of JSON for each, in order.
Exit status 0 when every line could be computed, 1 when one could not (the others are), 2 for a wrong call.
Claims are ids of the built-in library; metals of your own are known to the bench alone, also at its POST /api/compute.`;

/** `underhook compute [FILE]`; see usage. */
export async function run(args: string[]): Promise<number> {
  if (args.includes("--help")) {
    console.log(usage);
    return 0;
  }
  const [file, ...more] = args.filter((arg) => arg !== "-");
  if (more.length > 0 || file?.startsWith("-")) {
    console.error(`underhook compute: "${more[0] ?? file}" is not understood.\n\n${usage}`);
    return 2;
  }
  let status = 0;
  const input = file === undefined ? process.stdin : createReadStream(file);
  try {
    for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
      const answer = answerLine(line);
      if (answer === null) continue;
      if (isError(answer)) status = 1;
      await written(`${JSON.stringify(answer)}\n`);
    }
  } catch (error) {
    if (file === undefined || !(error instanceof Error)) throw error;
    console.error(
      `underhook compute: ${file} cannot be read (${error.message}). Give the name of a file of JSON Lines.`,
    );
    return 2;
  }
  return status;
}

/** Waits when the reader is slower than we are. */
function written(text: string): Promise<void> {
  return new Promise((resolve) => {
    if (process.stdout.write(text)) resolve();
    else process.stdout.once("drain", resolve);
  });
}
