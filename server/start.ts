import { existsSync, mkdirSync, renameSync } from "node:fs";
import type { RequestListener } from "node:http";
import { dirname } from "node:path";
import { createFeed } from "../drivers/feed.ts";
import { createSerialBalance } from "../drivers/serial-balance.ts";
import { createSimulatedBalance, type SimulatedBalance } from "../drivers/simulated-balance.ts";
import { buildApp } from "./app.ts";
import { Bench } from "./bench/bench.ts";
import { scaleOf } from "./bench/feed-scale.ts";
import { keptSettings } from "./bench/kept-settings.ts";
import { libraryInForce } from "./bench/library-in-force.ts";
import { openAside } from "./compute/aside.ts";
import { createDemoHands, type DemoHands } from "./demo/hands.ts";
import { FrontDoor } from "./front-door.ts";
import { ledgerFile } from "./ledger/data-folder.ts";
import { openLedger } from "./ledger/ledger.ts";
import type { ChangeBench } from "./routes/first-start.tsx";
import { demonstration, type Settings, typedBench } from "./settings.ts";
import { programVersion } from "./version.ts";

/** A running bench: where its pages are, and how to end it in good order. */
export interface Running {
  url: string;
  /** what it runs on: a folder that holds a real bench is not started as a demonstration */
  settings: Settings;
  stop(): Promise<void>;
}

/** Opens a bench and its pages on loopback only. The address stays when the bench behind it is exchanged. */
export async function start(asked: Settings): Promise<Running> {
  const begun = existsSync(ledgerFile(dirname(asked.dataFolder)));
  let settings = asked.source.kind === "demo" && begun ? typedBench(asked) : asked;
  let opened = await open(settings, change);
  const door = new FrontDoor(opened.listener);
  const port = await door.open(settings.port).catch(async (error) => {
    await opened.close();
    throw error;
  });

  function change(to: "demonstration" | "typed"): void {
    const next = to === "typed" ? typedBench(settings) : demonstration(settings);
    if (next.dataFolder === settings.dataFolder) return;
    const before = { opened, settings };
    void door.exchange(async () => {
      await before.opened.close();
      try {
        opened = await open(next, change);
        settings = next;
        if (before.settings.source.kind === "demo") setAside(before.settings.dataFolder);
      } catch (error) {
        console.error(`The bench was not exchanged, and the one before goes on. ${(error as Error).message}`);
        opened = await open(before.settings, change);
      }
      return opened.listener;
    });
  }
  return {
    url: `http://localhost:${port}/`,
    settings,
    async stop() {
      await door.close();
      await opened.close();
    },
  };
}

/** Renames a folder so that a new one can stand in its place; nothing in it is touched. */
function setAside(folder: string): void {
  const stamp = new Date().toISOString().slice(0, 19).replaceAll(":", "-");
  renameSync(folder, `${folder}-set-aside-${stamp}`);
}

/** What stands behind the address: one ledger, one balance, one bench with its pages. */
interface Opened {
  listener: RequestListener;
  close(): Promise<void>;
}

/** Opens the ledger, the balance and the pages, in this order. */
async function open(settings: Settings, changeBench: ChangeBench): Promise<Opened> {
  mkdirSync(settings.dataFolder, { recursive: true, mode: 0o700 });
  const ledger = await openLedger({
    file: ledgerFile(settings.dataFolder),
    now: () => new Date(),
    bench: settings.source.kind === "demo" ? "demonstration" : "bench",
  });
  const kept = await keptSettings(ledger);
  const library = await libraryInForce(ledger);
  const { balance, hands } = balanceFor(settings);
  const feed = balance && createFeed({ balance });
  const aside = openAside({ own: () => library.own });
  const bench = new Bench({
    ledger,
    scale: balance && feed ? scaleOf(balance.name, feed) : undefined,
    simulated: hands !== undefined,
    evaluate: aside.evaluate,
    conditions: () => kept.now.conditions,
    versions: { program: programVersion },
    library: () => library.now,
    preferences: () => kept.now,
  });
  await bench.resume();
  const app = await buildApp({
    bench,
    ledger,
    evaluate: aside.evaluate,
    compute: aside.compute,
    demoHands: hands,
    settings: kept,
    library,
    changeBench,
  });
  await app.ready();
  balance?.start();
  return {
    listener: (request, response) => app.routing(request, response),
    async close() {
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
