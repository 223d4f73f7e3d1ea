import { type ChildProcess, spawn } from "node:child_process";
import { createInterface } from "node:readline";
import { bench, describe } from "vitest";
import { createFeed } from "../../drivers/feed.ts";
import { createSerialBalance } from "../../drivers/serial-balance.ts";

const balances = 32;
const linesPerSecond = 20;
const seconds = 10;

// The balances live in another process, so that only listening is measured here. Each line carries the microseconds
// of the machine's monotonic clock as its weight; the clock is the same for both processes.
const farEnd = `
import * as pty from "@lydell/node-pty";
import { closeSync, constants, openSync } from "node:fs";
const ends = Array.from({ length: ${balances} }, () => {
  const end = pty.open({ cols: 80, rows: 24, encoding: null });
  openSync(end._pty, constants.O_RDWR | constants.O_NOCTTY);
  end.slave.destroy();
  return end;
});
console.log(JSON.stringify(ends.map((end) => end._pty)));
process.stdin.once("data", () => {
  for (const [i, end] of ends.entries())
    setTimeout(() => setInterval(() => {
      const micros = Number(process.hrtime.bigint() / 1000n % 10000000000n);
      end.master.write("  " + (micros / 10000).toFixed(4).padStart(12) + " g stable\\r\\n");
    }, ${1000 / linesPerSecond}), i * ${1000 / linesPerSecond / balances});
});
`;

describe(`${balances} balances at ${linesPerSecond} lines a second on one process`, () => {
  bench(
    `${seconds} s of listening`,
    async () => {
      const child: ChildProcess = spawn(process.execPath, ["--input-type=module", "-e", farEnd], {
        stdio: ["pipe", "pipe", "inherit"],
      });
      const paths = await new Promise<string[]>((told) =>
        createInterface({ input: child.stdout! }).once("line", (line) => told(JSON.parse(line))),
      );
      const latenciesMs: number[] = [];
      const listening = paths.map((path) => {
        const balance = createSerialBalance({ path });
        const feed = createFeed({ balance });
        feed.onLine(({ reading }) => {
          if (!reading) return;
          const nowMicros = Number((process.hrtime.bigint() / 1000n) % 10_000_000_000n);
          feed.latest();
          latenciesMs.push((nowMicros - Math.round(Number(reading.text) * 10_000)) / 1000);
        });
        balance.start();
        return balance;
      });
      await pause(500);
      child.stdin!.write("go\n");
      await pause(1500);
      latenciesMs.length = 0;
      const before = process.cpuUsage();
      await pause(seconds * 1000);
      const used = process.cpuUsage(before);
      const cpu = (used.user + used.system) / 1e6 / seconds;
      const sorted = latenciesMs.toSorted((a, b) => a - b);
      const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]?.toFixed(2);
      console.log(
        `${sorted.length} lines; ${(100 * cpu).toFixed(1)} % of one core; line to listener p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`,
      );
      child.kill();
      await Promise.all(listening.map((balance) => balance.stop()));
    },
    { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 },
  );
});

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
