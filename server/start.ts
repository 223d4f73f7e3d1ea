import { existsSync, mkdirSync, renameSync } from "node:fs";
import type { RequestListener } from "node:http";
import { dirname } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { createSimulatedBalance } from "../drivers/simulated-balance.ts";
import type { Access } from "./access/access.ts";
import { openAccess } from "./access/opened.ts";
import type { Room } from "./access/room.ts";
import { openComputeThread } from "./compute/compute-thread.ts";
import { createDemoSimulator, type DemoSimulator } from "./demo/simulator.ts";
import { ledgerFile } from "./ledger/data-folder.ts";
import type { Ledger } from "./ledger/ledger.ts";
import { openLedger } from "./ledger/open-ledger.ts";
import { pinKey } from "./ledger/pinned-key.ts";
import { keepReplicating } from "./ledger/replication.ts";
import { keepWitnessed } from "./ledger/witness/keep-witnessed.ts";
import { logError } from "./log.ts";
import { photosBeside } from "./photos/photo-folder.ts";
import { reportsBeside } from "./reports/report-folder.ts";
import { demonstration, realBench, type Settings, type Source } from "./settings.ts";
import { adjustmentRepository } from "./station/adjustment-repository.ts";
import { BalanceInUse } from "./station/balance-in-use.ts";
import { Bench } from "./station/bench.ts";
import { ownedInstruments } from "./station/bench-settings.ts";
import { checkRepository } from "./station/check-repository.ts";
import { currentLibrary } from "./station/current-library.ts";
import { HandDevices } from "./station/hand-devices.ts";
import { profileRepository } from "./station/profile-repository.ts";
import { SensorsInUse } from "./station/sensors-in-use.ts";
import { settingsRepository } from "./station/settings-repository.ts";
import { programVersion } from "./version.ts";
import { buildApp } from "./web/app.ts";
import { Listener } from "./web/listener.ts";
import { warmMatches } from "./web/metals/warm-matches.ts";
import type { ChangeBench } from "./web/settings/first-start.tsx";
import { keepDelivering } from "./webhooks/keep-delivering.ts";

/** A running bench: where its pages are, and how to end it in good order. */
export interface Running {
  url: string;
  /** what it runs on: a folder that holds a real bench is not started as a demonstration */
  settings: Settings;
  /** where other devices in the room open it, and the code of the first person while there is none */
  room?: { room: Room; firstCode: string | undefined };
  stop(): Promise<void>;
}

/** What the pages know of the address for the room; the address itself stands once it listens. */
interface InRoom {
  access: Access;
  room: () => Room | undefined;
}

/**
 * Opens a bench and its pages on loopback, and for the room when that is asked for. The addresses stay when the bench
 * behind them is exchanged. Throws Refusal when the address for the room or its certificate cannot be had.
 */
export async function start(asked: Settings): Promise<Running> {
  const begun = existsSync(ledgerFile(dirname(asked.dataFolder)));
  let settings = asked.source.kind === "demo" && begun ? realBench(asked) : asked;
  const entrance =
    asked.room &&
    (await openAccess(
      asked.room,
      asked.source.kind === "demo" ? dirname(asked.dataFolder) : asked.dataFolder,
    ));
  let room: Room | undefined;
  const inRoom = entrance && { access: entrance.access, room: () => room };
  let opened = await open(settings, change, inRoom);
  const listener = new Listener(opened.listener);
  const port = await listener.open(settings.port).catch(stopped);
  if (asked.room && entrance)
    room = await listener.openRoom(asked.room, entrance.certificate, entrance.at).catch(stopped);

  async function stop(): Promise<void> {
    entrance?.close();
    await listener.close();
    await opened.close();
  }
  async function stopped(error: unknown): Promise<never> {
    await stop();
    throw error;
  }

  function change(to: "demonstration" | "typed"): void {
    const next = to === "typed" ? realBench(settings) : demonstration(settings);
    if (next.dataFolder === settings.dataFolder) return;
    const before = { opened, settings };
    void listener.exchange(async () => {
      await before.opened.close();
      try {
        opened = await open(next, change, inRoom);
        settings = next;
        if (before.settings.source.kind === "demo") movedAway(before.settings.dataFolder);
      } catch (error) {
        // the bench before goes on
        logError(error);
        opened = await open(before.settings, change, inRoom);
      }
      return opened.listener;
    });
  }
  return {
    url: `http://localhost:${port}/`,
    settings,
    ...(room && entrance ? { room: { room, firstCode: entrance.access.codes.first?.code } } : {}),
    stop,
  };
}

/** Renames a folder so that a new one can stand in its place; nothing in it is touched. */
function movedAway(folder: string): void {
  const stamp = new Date().toISOString().slice(0, 19).replaceAll(":", "-");
  renameSync(folder, `${folder}-set-aside-${stamp}`);
}

/** What stands behind the address: one ledger, one balance, one bench with its pages. */
interface Opened {
  listener: RequestListener;
  close(): Promise<void>;
}

/** Opens the ledger, the balance and the pages, in this order. */
async function open(
  settings: Settings,
  changeBench: ChangeBench,
  inRoom: InRoom | undefined,
): Promise<Opened> {
  mkdirSync(settings.dataFolder, { recursive: true, mode: 0o700 });
  const ledger = await openLedger({
    file: ledgerFile(settings.dataFolder),
    now: () => new Date(),
    monotonicMs: () => performance.now(),
    bench: settings.source.kind === "demo" ? "demonstration" : settings.bench,
  });
  if (settings.source.kind !== "demo" && ledger.key) pinKey(settings.dataFolder, ledger.key.keyId);
  const kept = await settingsRepository(ledger);
  const library = await currentLibrary(ledger);
  const profiles = await profileRepository(ledger);
  const checks = await checkRepository(ledger, () => new Date());
  const adjustments = await adjustmentRepository(ledger, checks);
  const balance = new BalanceInUse(ledger, profiles);
  const simulator = await listen(balance, settings.source);
  const sensors = new SensorsInUse(ledger);
  await sensors.resume();
  const hands = new HandDevices(ledger);
  await hands.resume();
  const computeThread = openComputeThread({
    own: () => library.own,
    owned: () => ownedInstruments(kept.now.instruments),
  });
  const bench = new Bench({
    ledger,
    scale: balance.scale,
    simulated: simulator !== undefined,
    evaluate: computeThread.evaluate,
    plan: computeThread.plan,
    conditions: () => kept.now.conditions,
    versions: { program: programVersion },
    profileOf: checks.profileOf,
    closed: checks.closed,
    adjusted: adjustments.open,
    currentProfiles: checks.currentProfiles,
    library: () => library.now,
    sensors: () => sensors.now(),
    others: () => balance.others,
    preferences: () => kept.now,
    people: () => inRoom?.access.people.all ?? [],
  });
  await bench.resume();
  const handing = startReplication(ledger, settings);
  const isDemo = settings.source.kind === "demo";
  const options = { now: () => new Date(), sleep: pause };
  const witnessed = isDemo ? undefined : keepWitnessed(ledger, options);
  const webhooks = isDemo ? undefined : keepDelivering(ledger, options);
  const app = await buildApp({
    bench,
    ledger,
    evaluate: computeThread.evaluate,
    compute: computeThread.compute,
    plan: computeThread.plan,
    photos: photosBeside(ledgerFile(settings.dataFolder)),
    reports: reportsBeside(ledgerFile(settings.dataFolder)),
    simulator: simulator,
    settings: kept,
    library,
    balance,
    sensors,
    hands,
    profiles,
    checks,
    adjustments,
    changeBench,
    ...inRoom,
    ...(handing === undefined ? {} : { replication: handing.state }),
    ...(witnessed === undefined ? {} : { witnesses: witnessed.states }),
    ...(webhooks === undefined ? {} : { webhooks: webhooks.states }),
  });
  await app.ready();
  warmMatches(library.now);
  return {
    listener: (request, response) => app.routing(request, response),
    async close() {
      // A capture that still waits would keep the program alive for as long as its patience.
      bench.cancelCapture();
      await app.close();
      await balance.close();
      await sensors.close();
      await hands.close();
      await computeThread.close();
      await webhooks?.stop();
      await witnessed?.stop();
      await handing?.stop();
      await ledger.close();
    },
  };
}

/** Waits so many ms, or until the signal is aborted. */
async function pause(ms: number, signal: AbortSignal): Promise<void> {
  await wait(ms, undefined, { signal }).catch(() => undefined);
}

/** Hands over to the shared ledger, where there is one. Invented pieces are never handed over. */
function startReplication(ledger: Ledger, { databaseUrl, site, source }: Settings) {
  if (databaseUrl === undefined || source.kind === "demo") return undefined;
  const now = () => new Date();
  return keepReplicating(ledger, {
    openShared: async (ended) =>
      (await import("./ledger/shared/postgres-shared.ts")).openShared({ databaseUrl, now, ended }),
    site,
    now,
    sleep: pause,
  });
}

/** Opens what brings the readings; gives the hands at the simulated balance of a demonstration. */
async function listen(balance: BalanceInUse, source: Source): Promise<DemoSimulator | undefined> {
  const kept = await balance.kept();
  switch (source.kind) {
    case "demo": {
      const simulated = createSimulatedBalance({ seed: 1 });
      await balance.useSimulated(simulated);
      return createDemoSimulator(simulated);
    }
    case "cable":
      await balance.use(source);
      return undefined;
    case "chosen":
      await balance.use(kept);
      return undefined;
    case "typed":
      return undefined;
  }
}
