import { spawn } from "node:child_process";
import { createWriteStream, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { finished } from "node:stream/promises";
import { fileURLToPath } from "node:url";
import type { Benchmark } from "../../bench/benchmark.ts";

const entry = fileURLToPath(new URL("../../../dist/server/underhook.js", import.meta.url));

/** Claims of the counter with a density that fits; masses and temperatures vary from line to line. */
const pieces = [
  ["au-14y", 13.1],
  ["ag-999", 10.48],
  ["ag-925", 10.3],
  ["au-18y", 15.4],
] as const;

function line(n: number): string {
  const [claim, gPerCm3] = pieces[n % pieces.length]!;
  const grams = 20 + (n % 80);
  return JSON.stringify({
    id: `${n}`,
    method: "hung",
    dry: { readings: [grams.toFixed(3)] },
    immersed: { readings: [(grams - grams / gPerCm3).toFixed(3)] },
    liquid: { kind: "water", temperature_c: 19 + (n % 5), temperature_u_c: 0.3 },
    air: { density_kg_m3: 1.2, u_kg_m3: 0.03 },
    balance: { readability_g: 0.001, repeatability_g: 0.001 },
    bubble_allowance_mg: 1,
    claim,
  });
}

async function write(file: string, count: number): Promise<void> {
  const out = createWriteStream(file);
  for (let n = 0; n < count; n++) out.write(`${line(n)}\n`);
  out.end();
  await finished(out);
}

/** Seconds and the most memory of one run, on these cores (taskset of Debian's util-linux). */
async function run(file: string, cores: string): Promise<{ seconds: number; megabytes: number }> {
  const start = performance.now();
  const child = spawn("taskset", ["-c", cores, process.execPath, entry, "compute", file], {
    stdio: ["ignore", "ignore", "inherit"],
  });
  let megabytes = 0;
  const look = setInterval(() => {
    try {
      const kilobytes = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, "utf8"))?.[1];
      megabytes = Math.max(megabytes, Number(kilobytes ?? 0) / 1024);
    } catch {
      // it has just ended
    }
  }, 100);
  const status = await new Promise((resolve) => child.on("close", resolve));
  clearInterval(look);
  if (status !== 0) throw new Error(`compute ended with status ${status}.`);
  return { seconds: (performance.now() - start) / 1000, megabytes };
}

export default {
  name: "underhook compute over 20,000 lines",
  aboutSeconds: 120,
  async measure() {
    const folder = mkdtempSync(join(tmpdir(), "underhook-lines-"));
    const [short, long] = [join(folder, "short.jsonl"), join(folder, "long.jsonl")];
    const count = 20_000;
    try {
      await write(short, count / 10);
      await write(long, count);
      const cores = availableParallelism();
      const tenth = await run(short, `0-${cores - 1}`);
      const one = await run(long, "0");
      const all = await run(long, `0-${cores - 1}`);
      return [
        { what: "one core", value: count / one.seconds, unit: "lines/s" },
        { what: `all ${cores} cores`, value: count / all.seconds, unit: "lines/s" },
        { what: `all ${cores} cores over one`, value: one.seconds / all.seconds, unit: "×" },
        { what: "most memory, 2,000 lines", value: tenth.megabytes, unit: "MB" },
        { what: "most memory, 20,000 lines", value: all.megabytes, unit: "MB", atMost: 600 },
      ];
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
} satisfies Benchmark;
