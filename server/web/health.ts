import type { FastifyInstance } from "fastify";
import type { Ledger } from "../ledger/ledger.ts";
import type { ReplicationState } from "../ledger/replication.ts";
import type { Bench } from "../station/bench.ts";

export interface Watched {
  bench: Bench;
  ledger: Ledger;
  /** undefined on a bench that shares no ledger */
  replication?: (() => ReplicationState) | undefined;
}

/** How a bench stands: nothing of what was weighed, and no name. */
export function healthOf({ bench, ledger, replication }: Watched) {
  const live = bench.scale?.live();
  return {
    ledger: ledger.notStored === null ? "stores" : "cannot-store",
    balance: live === undefined ? "none" : live.state === "silent" ? "silent" : "heard",
    shared_ledger: replication?.().state ?? "none",
  } as const;
}

/** For whatever starts and watches programs: /health says that this one answers, /ready whether it can keep a record. */
export function healthRoutes(app: FastifyInstance, watched: Watched): void {
  app.get("/health", async () => ({ status: "ok" }));
  app.get("/ready", async (_request, reply) => {
    const health = healthOf(watched);
    const ready = health.ledger === "stores";
    return reply.code(ready ? 200 : 503).send({ status: ready ? "ready" : "not-ready", ...health });
  });
}
