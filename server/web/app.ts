import { randomBytes } from "node:crypto";
import cookie from "@fastify/cookie";
import csrf from "@fastify/csrf-protection";
import fastify, { type FastifyInstance } from "fastify";
import type { Access } from "../access/access.ts";
import type { Room } from "../access/room.ts";
import type { Evaluate } from "../compute/evaluation.ts";
import type { DemoSimulator } from "../demo/simulator.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { ReplicationState } from "../ledger/replication.ts";
import type { WitnessState } from "../ledger/witness/keep-witnessed.ts";
import { logOptions } from "../log.ts";
import type { AdjustmentRepository } from "../station/adjustment-repository.ts";
import { keepAdjustments } from "../station/adjustments-heard.ts";
import type { BalanceInUse } from "../station/balance-in-use.ts";
import type { Bench } from "../station/bench.ts";
import { timeZoneOf } from "../station/bench-settings.ts";
import type { CheckRepository } from "../station/check-repository.ts";
import type { CurrentLibrary } from "../station/current-library.ts";
import type { HandDevices } from "../station/hand-devices.ts";
import type { ProfileRepository } from "../station/profile-repository.ts";
import type { SensorsInUse } from "../station/sensors-in-use.ts";
import type { SettingsRepository } from "../station/settings-repository.ts";
import type { WebhookState } from "../webhooks/keep-delivering.ts";
import { peopleRoutes } from "./access/people.tsx";
import { onlySignedIn } from "./access/signed-in.ts";
import type { Compute } from "./api/compute.ts";
import { apiRoutes } from "./api/index.ts";
import { assetRoutes } from "./assets.ts";
import type { BalanceParts } from "./balances/balance-parts.ts";
import { balanceRoutes } from "./balances/balances.tsx";
import { benchRoutes } from "./bench/bench.tsx";
import { demoRoutes } from "./bench/demo.ts";
import { demoClearingRoute } from "./bench/demo-clearing.tsx";
import { secondPersonRoutes } from "./bench/second-person.tsx";
import { bodyLimit, readBodies } from "./bodies.ts";
import { checkRoutes } from "./checks/checks.tsx";
import { customerRoutes } from "./customer/customer.tsx";
import { answerErrors } from "./error-answers.ts";
import { evidenceRoutes } from "./evidence/evidence.tsx";
import { guard } from "./guard.ts";
import { sendHeaders } from "./headers.ts";
import { healthRoutes } from "./health.ts";
import { importRoutes } from "./imports/imports.tsx";
import { ticketRoutes } from "./imports/tickets.tsx";
import { assayRoutes } from "./laboratory/assays.tsx";
import { lotRoutes } from "./lots/lots.tsx";
import { metalPriceRoutes } from "./lots/metal-price.tsx";
import { meltRoutes } from "./melts/melts.tsx";
import { densityMatchRoutes } from "./metals/density-matches.tsx";
import { finenessRoutes } from "./metals/fineness.tsx";
import { metalRoutes } from "./metals/metals.tsx";
import { mixtureLawRoutes } from "./metals/mixture-law.tsx";
import { ownMetalRoutes } from "./metals/own-metals.tsx";
import { specificationRoutes } from "./metals/specifications.tsx";
import { twoBodiesRoutes } from "./metals/two-bodies.tsx";
import { worthRoutes } from "./metals/worth.tsx";
import { offlineRoutes } from "./offline/offline.tsx";
import { photoRoutes } from "./photos/photos.tsx";
import { type PlanWeighing, planRoutes } from "./plan/plan.tsx";
import { downloadRoutes } from "./records/downloads.ts";
import { labelRoutes } from "./records/label.ts";
import { recordRoutes } from "./records/records.tsx";
import { shareRoutes } from "./records/share.tsx";
import { statisticsRoute } from "./records/statistics.tsx";
import { reportRoutes } from "./reports/reports.tsx";
import { type ChangeBench, firstStartRoutes } from "./settings/first-start.tsx";
import { ledgerRoutes } from "./settings/ledger.tsx";
import { nameRoutes } from "./settings/names.tsx";
import { retentionRoutes } from "./settings/retention.tsx";
import { sensorRoutes } from "./settings/sensors.tsx";
import { settingsRoutes } from "./settings/settings.tsx";
import { tokenRoutes } from "./settings/tokens.tsx";
import { webhookRoutes } from "./settings/webhooks.tsx";
import { witnessRoute } from "./settings/witness.ts";

export interface AppParts {
  bench: Bench;
  ledger: Ledger;
  evaluate: Evaluate;
  compute: Compute;
  plan: PlanWeighing;
  /** the folder of the photos, beside the ledger */
  photos: string;
  /** the folder of the printed reports, beside the ledger */
  reports: string;
  /** hands at the simulated balance; undefined on a real bench */
  simulator: DemoSimulator | undefined;
  settings: SettingsRepository;
  library: CurrentLibrary;
  balance: BalanceInUse;
  profiles: ProfileRepository;
  checks: CheckRepository;
  adjustments: AdjustmentRepository;
  sensors: SensorsInUse;
  hands: HandDevices;
  /** the clock of the guided half minute, and how long finding listens at each setting; usual when left out */
  listening?: Pick<BalanceParts, "clock" | "findingMs">;
  /** exchanges this bench for another behind the same address; undefined where nothing can */
  changeBench?: ChangeBench;
  /** how far the shared ledger is behind; undefined on a bench that shares none */
  replication?: () => ReplicationState;
  /** who may sign in from the room; undefined: only the machine itself is listened to */
  access?: Access;
  /** the address for the room, once it listens */
  room?: () => Room | undefined;
  /** how it stands with each witness; undefined where none is asked */
  witnesses?: () => readonly WitnessState[];
  /** how it stands with each address that is told of what happens; undefined where none is told */
  webhooks?: () => readonly WebhookState[];
}

/** Routes of the API bring the compilers for their shapes; those of the framework for all others are never loaded. */
const compilersFactory = { buildValidator: noShapeHere, buildSerializer: noShapeHere };
function noShapeHere(): never {
  throw new Error("A route outside of the API has a shape: it must bring its compilers.");
}

/** The whole application, registered in reading order. It listens nowhere until told to. */
export async function buildApp(parts: AppParts): Promise<FastifyInstance> {
  const { bench, ledger, evaluate, compute, plan, simulator } = parts;
  const { settings, library, balance, profiles, checks, adjustments, changeBench } = parts;
  const { station } = bench;
  const demo = simulator !== undefined;
  const now = () => new Date();
  const app: FastifyInstance = fastify({
    ...{ forceCloseConnections: true, bodyLimit, schemaController: { compilersFactory } },
    ...logOptions(process.env.UNDERHOOK_LOG),
  });
  app.decorate("zone", () => timeZoneOf(settings.now));
  guard(app);
  await sendHeaders(app);
  await readBodies(app);
  await app.register(cookie, { secret: randomBytes(32).toString("hex") });
  await app.register(csrf, { cookieOpts: { signed: true, httpOnly: true, sameSite: "strict", path: "/" } });
  const { access } = parts;
  onlySignedIn(app, { access, ledger, demo, now });
  answerErrors(app, demo);
  assetRoutes(app);
  if (access) {
    const { signInRoutes } = await import("./access/sign-in.tsx");
    await app.register(async (scope) => signInRoutes(scope, { access, ledger, demo }));
  }
  const watched = { bench, ledger, replication: parts.replication };
  healthRoutes(app, watched);
  await app.register(async (scope) =>
    apiRoutes(scope, { ...watched, compute, library: () => library.now, now }),
  );
  const isNew = () => !demo && !settings.answered && bench.item === undefined;
  const { form, photos } = benchRoutes(app, {
    bench,
    ledger,
    balance,
    hands: parts.hands,
    demo,
    isNew,
  });
  if (simulator) demoRoutes(form, bench, simulator);
  recordRoutes(app, {
    ...{ station, ledger, evaluate, demo, library: () => library.now },
    photos: parts.photos,
  });
  photoRoutes(app, { bench, folder: parts.photos, ...photos });
  assayRoutes(app, { station, ledger, demo, library: () => library.now, now });
  metalPriceRoutes(app, { ledger, demo, library: () => library.now });
  evidenceRoutes(app, { station, ledger, evaluate, demo, library: () => library.now });
  reportRoutes(app, { ledger, folder: parts.reports, demo, library: () => library.now });
  labelRoutes(app, { ledger, evaluate, demo });
  shareRoutes(app, { ledger, evaluate, demo, library: () => library.now });
  downloadRoutes(app, ledger);
  statisticsRoute(app, { ledger, demo, library: () => library.now, now });
  const { priceLocked } = customerRoutes(app, { bench, ledger, settings, demo });
  lotRoutes(app, {
    ...{ bench, ledger, settings, demo, priceLocked },
    reports: parts.reports,
    library: () => library.now,
  });
  meltRoutes(app, { station, ledger, demo, now });
  specificationRoutes(app, { ledger, demo, library: () => library.now });
  finenessRoutes(app, ledger, demo);
  twoBodiesRoutes(app, () => library.now, demo);
  densityMatchRoutes(app, () => library.now, demo);
  metalRoutes(app, { library, demo });
  ownMetalRoutes(app, { library, demo });
  worthRoutes(app, { library, demo });
  mixtureLawRoutes(app, demo);
  planRoutes(app, { settings, library, plan, demo });
  checkRoutes(app, { bench, ledger, checks, adjustments, evaluate, demo });
  importRoutes(app, { ledger, library, demo });
  offlineRoutes(app, { bench, ledger, settings, library: () => library.now, demo });
  ticketRoutes(app, { bench, ledger, demo, library: () => library.now });
  ledgerRoutes(app, {
    ledger,
    demo,
    replication: parts.replication,
    witnesses: parts.witnesses ?? (() => []),
  });
  witnessRoute(app, ledger);
  sensorRoutes(app, { sensors: parts.sensors, hands: parts.hands, demo });
  peopleRoutes(app, { access, room: parts.room, ledger, demo });
  tokenRoutes(app, { ledger, demo, now });
  webhookRoutes(app, { ledger, demo, states: parts.webhooks ?? (() => []) });
  retentionRoutes(app, { ledger, demo, now });
  nameRoutes(app, { ledger, demo });
  secondPersonRoutes(app, { bench, ledger, demo });
  settingsRoutes(app, { ledger, settings, demo });
  firstStartRoutes(app, { settings, demo, cabled: bench.scale !== undefined, changeBench });
  demoClearingRoute(app, demo, changeBench);
  balance.onExchange((scale, how) => bench.exchangeScale(scale, how));
  balanceRoutes(app, { bench, balance, profiles, demo, ...parts.listening });
  settings.onChange(() => void bench.refresh());
  checks.onChange(() => void bench.refresh());
  keepAdjustments(bench, balance, adjustments);
  return app;
}
