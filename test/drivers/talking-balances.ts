import { type ChildProcess, spawn } from "node:child_process";
import { createInterface } from "node:readline";

/** Balances in a process of their own, so that only listening is measured. */
export interface TalkingBalances {
  /** the port of each */
  paths: string[];
  /** from now on each sends its lines, all evenly spread over the time between two lines */
  talk(): void;
  stop(): void;
}

// Each line carries the microseconds of the machine's monotonic clock as its weight, modulo 10^10; the clock is the same
// for every process.
const farEnd = (balances: number, linesPerSecond: number) => `
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

export async function talkingBalances(balances: number, linesPerSecond: number): Promise<TalkingBalances> {
  const child: ChildProcess = spawn(
    process.execPath,
    ["--input-type=module", "-e", farEnd(balances, linesPerSecond)],
    { stdio: ["pipe", "pipe", "inherit"] },
  );
  const paths = await new Promise<string[]>((told) =>
    createInterface({ input: child.stdout! }).once("line", (line) => told(JSON.parse(line))),
  );
  return { paths, talk: () => child.stdin!.write("go\n"), stop: () => child.kill() };
}

/** Age of a line in ms, from the number it carries. */
export function ageMs(text: string): number {
  const nowMicros = Number((process.hrtime.bigint() / 1000n) % 10_000_000_000n);
  return (nowMicros - Math.round(Number(text) * 10_000)) / 1000;
}

export const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
