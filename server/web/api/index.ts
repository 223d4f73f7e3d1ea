import etag from "@fastify/etag";
import type { FastifyInstance } from "fastify";
import { validatorCompiler } from "fastify-type-provider-zod";
import type { Library } from "../../metals/library.ts";
import type { Watched } from "../health.ts";
import { checksOfApi } from "./checks.ts";
import { type Compute, computeOfApi } from "./compute.ts";
import { documentOf } from "./document.ts";
import { entriesOfApi } from "./entries.ts";
import { liveOfApi } from "./live.ts";
import { lotsOfApi } from "./lots.ts";
import { metricsOfApi } from "./metrics.ts";
import { recordsOfApi } from "./records.ts";
import { scopeGuard } from "./require-scope.ts";
import { ticketsOfApi } from "./tickets.ts";

export interface ApiParts extends Watched {
  compute: Compute;
  library: () => Library;
  now: () => Date;
}

/** The API for laboratory systems: records, lots, checks, entries, tickets, the live reading, computing; GET /api/openapi.json describes it. */
export async function apiRoutes(app: FastifyInstance, parts: ApiParts): Promise<void> {
  await app.register(etag);
  describedRoutes(app, parts);
  let document: Promise<object> | undefined;
  app.get("/api/openapi.json", () => {
    document ??= documentOf((described) => describedRoutes(described, parts));
    return document;
  });
}

function describedRoutes(app: FastifyInstance, parts: ApiParts): void {
  const { bench, ledger, compute, library, now } = parts;
  app.setValidatorCompiler(validatorCompiler);
  // What is sent was checked when it was written; the published shapes are held against real answers in the tests.
  app.setSerializerCompiler(() => (answer) => JSON.stringify(answer));
  app.decorateRequest("program", "");
  const requireScope = scopeGuard(ledger, now);
  computeOfApi(app, compute);
  recordsOfApi(app, ledger, requireScope);
  lotsOfApi(app, ledger, library, requireScope);
  checksOfApi(app, ledger, requireScope);
  liveOfApi(app, bench, requireScope);
  entriesOfApi(app, ledger, requireScope);
  ticketsOfApi(app, ledger, library, requireScope);
  metricsOfApi(app, parts, requireScope);
}
