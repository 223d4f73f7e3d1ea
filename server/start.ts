import { mkdirSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { createFeed } from "../drivers/feed.ts";
import { createSerialBalance } from "../drivers/serial-balance.ts";
import { createSimulatedBalance, type SimulatedBalance } from "../drivers/simulated-balance.ts";
import { libraryVersion } from "./alloys/library.ts";
import { buildApp } from "./app.ts";
import { Bench } from "./bench/bench.ts";
import { firstConditions } from "./bench/conditions.ts";
import { scaleOf } from "./bench/feed-scale.ts";
import { openAside } from "./compute/aside.ts";
import { createDemoHands, type DemoHands } from "./demo/hands.ts";
import { ledgerFile } from "./ledger/data-folder.ts";
import { openLedger } from "./ledger/ledger.ts";
import type { Settings } from "./settings.ts";
import { programVersion } from "./version.ts";

/** A running bench: where its pages are, and how to end it in good order. */
export interface Running {
  url: string;
  stop(): Promise<void>;
}

/** Opens the ledger, the balance and the pages, in this order, and listens on loopback only. */
export async function start(settings: Settings): Promise<Running> {
  mkdirSync(settings.dataFolder, { recursive: true, mode: 0o700 });
  const ledger = await openLedger({
    file: ledgerFile(settings.dataFolder),
    now: () => new Date(),
    bench: settings.source.kind === "demo" ? "demonstration" : "bench",
  });
  const { balance, hands } = balanceFor(settings);
  const feed = balance && createFeed({ balance });
  const aside = openAside();
  const bench = new Bench({
    ledger,
    scale: balance && feed ? scaleOf(balance.name, feed) : undefined,
    simulated: hands !== undefined,
    evaluate: aside.evaluate,
    conditions: () => firstConditions,
    versions: { program: programVersion, library: libraryVersion },
  });
  await bench.resume();
  const app = await buildApp({
    bench,
    ledger,
    evaluate: aside.evaluate,
    compute: aside.compute,
    demoHands: hands,
  });
  balance?.start();
  await app.listen({ host: "127.0.0.1", port: settings.port });
  const { port } = app.server.address() as AddressInfo;
  return {
    url: `http://localhost:${port}/`,
    async stop() {
      await app.close();
      feed?.stop();
      await balance?.stop();
      await aside.close();
      await ledger.close();
    },
  };
}

function balanceFor({ source }: Settings): {
  balance?: ReturnType<typeof createSerialBalance>;
  hands?: DemoHands;
} {
  if (source.kind === "serial")
    return { balance: createSerialBalance({ path: source.path, line: source.line }) };
  if (source.kind === "typed") return {};
  const balance: SimulatedBalance = createSimulatedBalance({ seed: 1 });
  return { balance, hands: createDemoHands(balance) };
}
