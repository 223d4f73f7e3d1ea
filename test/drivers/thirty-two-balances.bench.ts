import { createReadingStream } from "../../drivers/reading-stream.ts";
import { createSerialBalance } from "../../drivers/serial-balance.ts";
import { type Benchmark, quantile } from "../bench/benchmark.ts";
import { ageMs, pause, talkingBalances } from "./talking-balances.ts";

const balances = 32;
const linesPerSecond = 20;
const seconds = 10;

export default {
  name: `${balances} balances at ${linesPerSecond} lines a second on one process`,
  aboutSeconds: seconds + 4,
  async measure() {
    const far = await talkingBalances(balances, linesPerSecond);
    const latenciesMs: number[] = [];
    const listening = far.paths.map((path) => {
      const balance = createSerialBalance({ path });
      const stream = createReadingStream({ balance });
      stream.onLine(({ reading }) => {
        if (!reading) return;
        latenciesMs.push(ageMs(reading.text));
        stream.latest();
      });
      balance.start();
      return balance;
    });
    await pause(500);
    far.talk();
    await pause(1500);
    latenciesMs.length = 0;
    const before = process.cpuUsage();
    await pause(seconds * 1000);
    const used = process.cpuUsage(before);
    far.stop();
    await Promise.all(listening.map((balance) => balance.stop()));
    return [
      { what: "lines heard", value: latenciesMs.length, unit: "" },
      { what: "one core used", value: (used.user + used.system) / 1e4 / seconds, unit: "%" },
      { what: "line to listener, p50", value: quantile(latenciesMs, 0.5), unit: "ms" },
      { what: "line to listener, p99", value: quantile(latenciesMs, 0.99), unit: "ms" },
    ];
  },
} satisfies Benchmark;
