import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Benchmark, quantile } from "../bench/benchmark.ts";
import { longRun } from "../setup/long-run.ts";
import { startBench } from "./running.ts";

const weighings = longRun(1_000_000);
const program = join("dist", "test", "scale-process.js");

const typed = [
  "H-00",
  "H-0001",
  "H-00012",
  "H-0099999",
  "med",
  "medal",
  "medal ring",
  "lot 12",
  "spoon",
  "customer 31",
  "zzz",
];
const filters = [
  "",
  "&claim=ag-925",
  "&state=excluded",
  "&from=2016-05-01&to=2016-06-30",
  "&mass=31.1",
  "&mass=5+to+95",
  "&mass=31.1+%2B-+0.2&from=2016-05-01&to=2016-06-30&photo=with",
];

/** How long the page's part takes over HTTP as one types, ms each. */
async function searches(folder: string): Promise<number[]> {
  const running = await startBench(["--typed"], folder);
  try {
    const times: number[] = [];
    for (let round = 0; round < 3; round += 1)
      for (const q of typed)
        for (const filter of filters) {
          const start = performance.now();
          const answer = await fetch(`${running.url}records?q=${encodeURIComponent(q)}${filter}`, {
            headers: { "hx-request": "true" },
          });
          const part = await answer.text();
          if (!part.includes('id="found"'))
            throw new Error(`The search for "${q}${filter}" answered ${part}`);
          times.push(performance.now() - start);
        }
    return times;
  } finally {
    await running.stop();
  }
}

export default {
  name: `a ledger of ${weighings} weighings on disk, and searching it as one types`,
  aboutSeconds: weighings / 2000,
  async measure() {
    const folder = mkdtempSync(join(tmpdir(), "underhook-large-"));
    try {
      const file = join(folder, "ledger.sqlite");
      execFileSync(process.execPath, [program, "make", file, String(weighings)]);
      const found = JSON.parse(
        execFileSync(process.execPath, [program, "measure", file], { encoding: "utf8" }),
      );
      if (found.good !== true) throw new Error(`The ledger does not verify: ${found.message}`);
      const times = await searches(folder);
      return [
        { what: "size on disk", value: statSync(file).size / 2 ** 20, unit: "MB" },
        { what: "opens", value: found.openMs, unit: "ms" },
        { what: "lists, p95", value: found.listP95, unit: "ms", atMost: 50 },
        { what: "filters, p95", value: found.filterP95, unit: "ms", atMost: 50 },
        { what: "searches, p95", value: found.searchP95, unit: "ms", atMost: 50 },
        { what: "appends, p99", value: found.appendP99, unit: "ms", atMost: 20 },
        { what: "verifies", value: found.verifySeconds, unit: "s", atMost: 30 },
        { what: "memory", value: found.memoryMB, unit: "MB", atMost: 200 },
        { what: "search page over HTTP, p50", value: quantile(times, 0.5), unit: "ms" },
        // under the 250 ms a typist pauses
        { what: "search page over HTTP, p95", value: quantile(times, 0.95), unit: "ms", atMost: 100 },
      ];
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
} satisfies Benchmark;
