import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance, LightMyRequestResponse } from "fastify";
import type { PortRoots } from "../../drivers/ports.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import { compute } from "../../server/compute/compute.ts";
import { type Evaluate, evaluationOf } from "../../server/compute/evaluation.ts";
import { planFor } from "../../server/conformity/plan/plan.ts";
import type { PlannedWeighing } from "../../server/conformity/plan/planned-weighing.ts";
import { createDemoSimulator } from "../../server/demo/simulator.ts";
import type { Ledger } from "../../server/ledger/ledger.ts";
import { openLedger } from "../../server/ledger/open-ledger.ts";
import { photosBeside } from "../../server/photos/photo-folder.ts";
import { reportsBeside } from "../../server/reports/report-folder.ts";
import { adjustmentRepository } from "../../server/station/adjustment-repository.ts";
import { BalanceInUse } from "../../server/station/balance-in-use.ts";
import { Bench } from "../../server/station/bench.ts";
import { type CheckRepository, checkRepository } from "../../server/station/check-repository.ts";
import { type CurrentLibrary, currentLibrary } from "../../server/station/current-library.ts";
import { HandDevices } from "../../server/station/hand-devices.ts";
import { type ProfileRepository, profileRepository } from "../../server/station/profile-repository.ts";
import { SensorsInUse } from "../../server/station/sensors-in-use.ts";
import { type SettingsRepository, settingsRepository } from "../../server/station/settings-repository.ts";
import { type AppParts, buildApp } from "../../server/web/app.ts";
import { pageFields } from "./page-fields.ts";

/** A typed bench with a ledger on disk, for injected requests. */
export interface TestBench {
  app: FastifyInstance;
  bench: Bench;
  ledger: Ledger;
  file: string;
  settings: SettingsRepository;
  library: CurrentLibrary;
  balance: BalanceInUse;
  sensors: SensorsInUse;
  hands: HandDevices;
  profiles: ProfileRepository;
  checks: CheckRepository;
  /** posts a form as the bench's own page, drawn at this moment, would; fields that are given go before its own */
  post(
    path: string,
    fields: Record<string, string>,
    headers?: Record<string, string>,
  ): Promise<LightMyRequestResponse>;
  /** posts a form with a file in it */
  send(
    path: string,
    file: { name: string; text: string },
    fields?: Record<string, string>,
  ): Promise<LightMyRequestResponse>;
  close(): Promise<void>;
}

export interface TestBenchOptions {
  answered?: boolean;
  /** a demonstration with its simulated balance */
  demo?: boolean;
  listening?: NonNullable<AppParts["listening"]>;
  /** where the system shows sensors that are plugged in */
  roots?: PortRoots;
  /** who may sign in, and the address they come by */
  entrance?: Pick<AppParts, "access" | "room">;
}

/** `answered`: false for a bench whose first questions are still open. */
export async function buildTestBench(
  file = newLedgerFile(),
  { answered = true, demo = false, listening = {}, roots, entrance = {} }: TestBenchOptions = {},
): Promise<TestBench> {
  const ledger = await openLedger({ file, now: () => new Date(), bench: "test" });
  const settings = await settingsRepository(ledger);
  if (answered && !settings.answered) await settings.keep({});
  const library = await currentLibrary(ledger);
  const profiles = await profileRepository(ledger);
  const checks = await checkRepository(ledger, () => new Date());
  const adjustments = await adjustmentRepository(ledger, checks);
  const balance = new BalanceInUse(ledger, profiles);
  const sensors = new SensorsInUse(ledger, roots);
  await sensors.resume();
  const hands = new HandDevices(ledger);
  await hands.resume();
  const simulated = demo ? createSimulatedBalance({ seed: 1 }) : undefined;
  if (simulated) await balance.useSimulated(simulated);
  else await balance.use(await balance.kept());
  const evaluate: Evaluate = async (request, knows) => evaluationOf(request, library.own, knows);
  const plan = async (weighing: PlannedWeighing) => planFor(weighing, library.now);
  const bench = new Bench({
    ledger,
    scale: balance.scale,
    simulated: demo,
    evaluate,
    plan,
    conditions: () => settings.now.conditions,
    versions: { program: "test" },
    profileOf: checks.profileOf,
    closed: checks.closed,
    adjusted: adjustments.open,
    currentProfiles: checks.currentProfiles,
    library: () => library.now,
    sensors: () => sensors.now(),
    others: () => balance.others,
    preferences: () => settings.now,
    people: () => entrance.access?.people.all ?? [],
  });
  await bench.resume();
  const app = await buildApp({
    bench,
    ledger,
    evaluate,
    compute: async (request) => compute(request, library.now),
    simulator: simulated && createDemoSimulator(simulated),
    plan,
    photos: photosBeside(file),
    reports: reportsBeside(file),
    settings,
    library,
    balance,
    sensors,
    hands,
    profiles,
    checks,
    adjustments,
    listening,
    ...entrance,
  });
  const first = await app.inject({ url: "/settings", headers: { host: "localhost:1" } });
  const token = /name="_csrf" value="([^"]+)"/.exec(first.body)?.[1] ?? "";
  const cookie = String(first.headers["set-cookie"]).split(";")[0] ?? "";
  return {
    app,
    bench,
    ledger,
    file,
    settings,
    library,
    balance,
    sensors,
    hands,
    profiles,
    checks,
    post: async (url, fields, headers = {}) =>
      app.inject({
        method: "POST",
        url,
        headers: {
          host: "localhost:1",
          origin: "http://localhost:1",
          cookie,
          "content-type": "application/x-www-form-urlencoded",
          ...headers,
        },
        payload: new URLSearchParams({
          _csrf: token,
          ...(await pageFields({ bench, ledger }, url, fields)),
        }).toString(),
      }),
    send(url, { name, text }, fields = {}) {
      const edge = "----underhook-test-edge";
      const part = (head: string, body: string) =>
        `--${edge}\r\nContent-Disposition: form-data; ${head}\r\n\r\n${body}\r\n`;
      const parts = Object.entries({ _csrf: token, ...fields }).map(([key, value]) =>
        part(`name="${key}"`, value),
      );
      const file = part(`name="${name}"; filename="file.json"\r\nContent-Type: application/json`, text);
      return app.inject({
        method: "POST",
        url,
        headers: {
          host: "localhost:1",
          origin: "http://localhost:1",
          cookie,
          "content-type": `multipart/form-data; boundary=${edge}`,
        },
        payload: `${parts.join("")}${file}--${edge}--\r\n`,
      });
    },
    async close() {
      await app.close();
      await balance.close();
      await ledger.close();
    },
  };
}

export function newLedgerFile(): string {
  return join(mkdtempSync(join(tmpdir(), "underhook-")), "ledger.sqlite");
}
