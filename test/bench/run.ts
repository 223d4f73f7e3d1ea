// npm run bench [-- PART-OF-A-NAME …]: measures one file `*.bench.ts` after the other, says which, and writes all figures as
// one table to test/output/bench.txt and bench.json. Ends with 1 when a limit fell short or something could not be measured.
import { spawn } from "node:child_process";
import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import build from "../setup/build.ts";
import { provide } from "../setup/debian.ts";
import { whole } from "../setup/long-run.ts";
import type { Benchmark, Figure } from "./benchmark.ts";
import { good, type Outcome, table } from "./table.ts";

/** One that takes longer than this many times what it says is ended, s, and counts as failed. */
const patience = { times: 6, leastSeconds: 60 };

const folder = join(import.meta.dirname, "..");
const asked = process.argv.slice(2);
const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".bench.ts"))
  .filter((name) => asked.length === 0 || asked.some((part) => name.includes(part)))
  .sort();

build();
const outcomes: Outcome[] = [];
for (const [place, file] of files.entries()) {
  const { default: benchmark } = (await import(pathToFileURL(join(folder, file)).href)) as {
    default: Benchmark;
  };
  console.log(`${place + 1} of ${files.length}: ${benchmark.name}, about ${benchmark.aboutSeconds} s`);
  const outcome = await outcomeOf(benchmark, join(folder, file));
  outcomes.push(outcome);
  console.log(`   ${outcome.error ?? `${outcome.figures.length} figures`}, ${outcome.seconds.toFixed(1)} s`);
}

const text = table(outcomes);
const output = join(folder, "output");
mkdirSync(output, { recursive: true });
writeFileSync(join(output, "bench.txt"), `${text}\n`);
const machine = { at: new Date().toISOString(), node: process.version, cpus: cpus().length, whole };
writeFileSync(join(output, "bench.json"), `${JSON.stringify({ ...machine, outcomes }, null, 2)}\n`);
console.log(`\n${text}\n\nWritten to ${relative(".", output)}/bench.txt and bench.json.`);
const bad = outcomes.filter((outcome) => !good(outcome));
console.log(
  bad.length === 0
    ? `All ${outcomes.length} benchmarks keep their limits.`
    : `${bad.length} of ${outcomes.length} benchmarks fell short or failed: ${bad.map(({ name }) => name).join("; ")}.`,
);
process.exitCode = bad.length === 0 && outcomes.length > 0 ? 0 : 1;

/** Measures in a group of processes of its own, which is ended with all it started when it takes too long. */
async function outcomeOf({ name, aboutSeconds, needs = [] }: Benchmark, path: string): Promise<Outcome> {
  const start = performance.now();
  const seconds = () => (performance.now() - start) / 1000;
  try {
    provide(...needs);
  } catch (cause) {
    return { name, seconds: seconds(), figures: [], error: (cause as Error).message };
  }
  const child = spawn(
    process.execPath,
    ["--import", "tsx", join(import.meta.dirname, "measure-one.ts"), path],
    {
      stdio: ["ignore", "inherit", "pipe", "ipc"],
      detached: true,
      // figures arrive as they are, also one that is no number
      serialization: "advanced",
    },
  );
  let said = "";
  child.stderr?.setEncoding("utf8").on("data", (text: string) => {
    said += text;
  });
  let figures: Figure[] = [];
  child.on("message", (message) => {
    figures = message as Figure[];
  });
  const most = Math.max(patience.leastSeconds, patience.times * aboutSeconds);
  const status = await new Promise<number | null | "too long">((resolve) => {
    const timer = setTimeout(() => resolve("too long"), most * 1000);
    child.on("close", (code) => {
      clearTimeout(timer);
      resolve(code);
    });
  });
  if (child.pid !== undefined) endGroup(child.pid);
  if (figures.length > 0) return { name, seconds: seconds(), figures };
  const error =
    status === "too long" ? `not done within ${most} s` : `ended with ${status}: ${said.trim().slice(-600)}`;
  return { name, seconds: seconds(), figures, error };
}

/** Ends what is left of a group of processes; nothing is left after a good end. */
function endGroup(pid: number): void {
  try {
    process.kill(-pid, "SIGKILL");
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code !== "ESRCH") throw cause;
  }
}
