import { bench, describe } from "vitest";
import { createFeed } from "../../drivers/feed.ts";
import { createSerialBalance } from "../../drivers/serial-balance.ts";
import { ageMs, pause, quantile, talkingBalances } from "./talking-balances.ts";

const balances = 32;
const linesPerSecond = 20;
const seconds = 10;

describe(`${balances} balances at ${linesPerSecond} lines a second on one process`, () => {
  bench(
    `${seconds} s of listening`,
    async () => {
      const far = await talkingBalances(balances, linesPerSecond);
      const latenciesMs: number[] = [];
      const listening = far.paths.map((path) => {
        const balance = createSerialBalance({ path });
        const feed = createFeed({ balance });
        feed.onLine(({ reading }) => {
          if (!reading) return;
          latenciesMs.push(ageMs(reading.text));
          feed.latest();
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
      const cpu = (used.user + used.system) / 1e6 / seconds;
      const at = (share: number) => quantile(latenciesMs, share).toFixed(2);
      console.log(
        `${latenciesMs.length} lines; ${(100 * cpu).toFixed(1)} % of one core; line to listener p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`,
      );
      far.stop();
      await Promise.all(listening.map((balance) => balance.stop()));
    },
    { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 },
  );
});
