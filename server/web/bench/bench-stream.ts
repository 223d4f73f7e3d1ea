import type { FastifyInstance } from "fastify";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Bench } from "../../station/bench.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { isWatching } from "./checks-now.ts";

/** How often the live part is looked at although no line came, so that silence shows its age. */
const ageEveryMs = 1000;

/** The stream that keeps every open Bench page as the bench is now; it ends with the server. */
export function benchStream(
  app: FastifyInstance,
  { bench, balance }: { bench: Bench; balance: BalanceInUse },
  parts: ReadonlyMap<string, Draw>,
): LiveStream {
  const stream = new LiveStream(parts, heartbeatSeconds * 1000);
  const checks = changedChecks(bench);
  bench.onLine(() => {
    stream.changed("live-reading");
    if (checks()) stream.changed("piece");
  });
  bench.onChange(() => stream.changed(...parts.keys()));
  balance.onBeside((what) => what === "list" && stream.changed("piece"));
  const ageing = setInterval(() => stream.changed("live-reading"), ageEveryMs);
  ageing.unref();
  app.addHook("onClose", async () => clearInterval(ageing));
  app.addHook("preClose", async () => stream.close());
  return stream;
}

/** Says whether a line changed what must be looked at: on the balance, at the immersion that a capture waits for, or at a load that was watched. */
function changedChecks(bench: Bench): () => boolean {
  let balanceBefore = 0;
  let watchingBefore = false;
  let immersionBefore = "";
  return () => {
    const balance = bench.scale?.checks().length ?? 0;
    const immersion = bench.waitingFor ? bench.checks.map(({ code }) => code).join() : immersionBefore;
    const watching = isWatching(bench);
    const changed = balance !== balanceBefore || immersion !== immersionBefore || watching !== watchingBefore;
    watchingBefore = watching;
    balanceBefore = balance;
    immersionBefore = immersion;
    return changed;
  };
}
