import { createReadStream } from "node:fs";
import { createInterface } from "node:readline";
import { parseArgs } from "node:util";
import { type Locale, locales } from "../../views/messages/language.ts";
import { type Addend, totalOf } from "../compute/total.ts";
import type { Answering } from "./answered-line.ts";
import { answersInOrder } from "./answers-in-order.ts";

const usage = `underhook compute [--lang en|de|es] [--total] [FILE]

Reads JSON Lines, one weighing on each, from FILE or from standard input (-); writes one line of JSON for each, in order.
--lang   language of the messages; en when left out
--total  a last line with the sums, for lines that were all weighed on one balance in one water
Exit status 0 when every line could be computed, 1 when one could not (the others are), 2 for a wrong call.
Claims are ids of the built-in library; metals of your own are known to the bench alone, also at its POST /api/compute.`;

/** `underhook compute [FILE]`; see usage. */
export async function run(args: string[]): Promise<number> {
  const asked = askedBy(args);
  if (asked === "help") {
    console.log(usage);
    return 0;
  }
  if ("wrong" in asked) {
    console.error(`underhook compute: ${asked.wrong}\n\n${usage}`);
    return 2;
  }
  const { file, locale, total } = asked;
  // the reader has enough: a closed pipe ends quietly
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
    process.exit(0);
  });
  const input = file === undefined ? process.stdin : createReadStream(file);
  try {
    return await answerAll(input, { locale, total });
  } catch (error) {
    if (file === undefined || !(error instanceof Error)) throw error;
    console.error(
      `underhook compute: ${file} cannot be read (${error.message}). Give the name of a file of JSON Lines.`,
    );
    return 2;
  }
}

type Asked = { file: string | undefined; locale: Locale; total: boolean };

function askedBy(args: string[]): Asked | { wrong: string } | "help" {
  let parsed: { values: { help?: boolean; lang?: string; total?: boolean }; positionals: string[] };
  try {
    parsed = parseArgs({
      args,
      allowPositionals: true,
      options: { help: { type: "boolean" }, lang: { type: "string" }, total: { type: "boolean" } },
    });
  } catch (error) {
    return { wrong: error instanceof Error ? error.message : String(error) };
  }
  const { help, lang = "en", total = false } = parsed.values;
  if (help) return "help";
  const locale = locales.find((one) => one === lang);
  if (locale === undefined) return { wrong: `"${lang}" is no language here. Right: ${locales.join(", ")}.` };
  const [file, ...more] = parsed.positionals.filter((one) => one !== "-");
  if (more.length > 0) return { wrong: `"${more[0]}" is not understood.` };
  return { file, locale, total };
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
