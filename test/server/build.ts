import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance, LightMyRequestResponse } from "fastify";
import { buildApp } from "../../server/app.ts";
import { Bench } from "../../server/bench/bench.ts";
import { firstConditions } from "../../server/bench/conditions.ts";
import { compute } from "../../server/compute/compute.ts";
import { evaluationOf } from "../../server/compute/evaluation.ts";
import { type Ledger, openLedger } from "../../server/ledger/ledger.ts";

/** A typed bench with a ledger on disk, for injected requests. */
export interface TestBench {
  app: FastifyInstance;
  bench: Bench;
  ledger: Ledger;
  file: string;
  /** posts a form as the bench's own page would */
  post(path: string, fields: Record<string, string>): Promise<LightMyRequestResponse>;
  close(): Promise<void>;
}

export async function buildTestBench(file = newLedgerFile()): Promise<TestBench> {
  const ledger = await openLedger({ file, now: () => new Date(), bench: "test" });
  const evaluate = async (request: unknown) => evaluationOf(request);
  const bench = new Bench({
    ledger,
    scale: undefined,
    simulated: false,
    evaluate,
    conditions: () => firstConditions,
    versions: { program: "test" },
  });
  await bench.resume();
  const app = await buildApp({
    bench,
    ledger,
    evaluate,
    compute: async (request) => compute(request),
    demoHands: undefined,
  });
  const first = await app.inject({ url: "/", headers: { host: "localhost:1" } });
  const token = /name="_csrf" value="([^"]+)"/.exec(first.body)?.[1] ?? "";
  const cookie = String(first.headers["set-cookie"]).split(";")[0] ?? "";
  return {
    app,
    bench,
    ledger,
    file,
    post: (url, fields) =>
      app.inject({
        method: "POST",
        url,
        headers: {
          host: "localhost:1",
          origin: "http://localhost:1",
          cookie,
          "content-type": "application/x-www-form-urlencoded",
        },
        payload: new URLSearchParams({ _csrf: token, ...fields }).toString(),
      }),
    async close() {
      await app.close();
      await ledger.close();
    },
  };
}

export function newLedgerFile(): string {
  return join(mkdtempSync(join(tmpdir(), "underhook-")), "ledger.sqlite");
}
