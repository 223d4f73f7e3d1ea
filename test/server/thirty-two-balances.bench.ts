import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { type Benchmark, quantile } from "../bench/benchmark.ts";
import { ageMs, pause, talkingBalances } from "../drivers/talking-balances.ts";
import { startBench } from "./running.ts";

const balances = 32;
const linesPerSecond = 20;
const seconds = 10;

/** Limits of the bench for so many balances: CPU in one core, and from the line to the page. */
const mostPercentOfACore = 25;
const mostMs = 50;

/** Processor seconds that a process has used, from the system's own count. */
function cpuSeconds(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ")[1]!.split(" ");
  const ticks = Number(execFileSync("getconf", ["CLK_TCK"], { encoding: "utf8" }));
  return (Number(fields[11]) + Number(fields[12])) / ticks;
}

/** Takes the first balance and hears all others beside it, through the forms of the page. */
async function hearAll(url: string, paths: readonly string[]): Promise<void> {
  const first = await fetch(`${url}settings`);
  const token = /name="_csrf" value="([^"]+)"/.exec(await first.text())?.[1] ?? "";
  const cookie = first.headers.get("set-cookie")?.split(";")[0] ?? "";
  for (const [place, port] of paths.entries()) {
    const answer = await fetch(`${url}balances/${place === 0 ? "choice" : "beside"}`, {
      method: "POST",
      redirect: "manual",
      headers: { cookie, origin: url.slice(0, -1) },
      body: new URLSearchParams({ _csrf: token, port }),
    });
    if (answer.status !== 303) throw new Error(`The port ${port} was not taken: status ${answer.status}`);
  }
}

/**
 * The whole way: the built program listens to 32 serial lines, and a page at the far end of an HTTP connection is told
 * of each. A line counts when its number first stands in a message.
 */
export default {
  name: `${balances} balances at ${linesPerSecond} lines a second, from the line to the page`,
  aboutSeconds: seconds + 7,
  async measure() {
    const far = await talkingBalances(balances, linesPerSecond);
    const running = await startBench(["--typed"]);
    await hearAll(running.url, far.paths);
    const stream = new AbortController();
    const response = await fetch(`${running.url}balances/live`, { signal: stream.signal });
    const latenciesMs: number[] = [];
    let seen = new Set<string>();
    let rest = "";
    const read = async () => {
      for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
        const messages = (rest + chunk).split("\n\n");
        rest = messages.pop() ?? "";
        for (const message of messages) {
          const shown = message.match(/\d+\.\d{4}(?= g\b)/g) ?? [];
          for (const text of new Set(shown)) if (!seen.has(text)) latenciesMs.push(ageMs(text));
          seen = new Set([...[...seen].slice(-2000), ...shown]);
        }
      }
    };
    const reading = read().catch(() => undefined);
    far.talk();
    await pause(3000);
    latenciesMs.length = 0;
    const before = cpuSeconds(running.process.pid!);
    await pause(seconds * 1000);
    const cpu = (cpuSeconds(running.process.pid!) - before) / seconds;
    const counted = latenciesMs.slice();
    stream.abort();
    await reading;
    far.stop();
    await running.stop();
    return [
      {
        what: `lines on the page, of ${balances * linesPerSecond * seconds}`,
        value: counted.length,
        unit: "",
      },
      { what: "one core used", value: 100 * cpu, unit: "%", atMost: mostPercentOfACore },
      { what: "line to page, p50", value: quantile(counted, 0.5), unit: "ms" },
      { what: "line to page, p99", value: quantile(counted, 0.99), unit: "ms", atMost: mostMs },
    ];
  },
} satisfies Benchmark;
