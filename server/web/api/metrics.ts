import type { FastifyInstance } from "fastify";
import type { Registry } from "prom-client";
import { z } from "zod";
import { tell } from "../../../views/messages/tell.ts";
import { healthOf, type Watched } from "../health.ts";
import { documentLanguage } from "./language.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";

/** Figures of the running bench in the text form that Prometheus reads (OpenMetrics' forerunner, version 0.0.4). */
export function metricsOfApi(app: FastifyInstance, watched: Watched, requireScope: RequireScope): void {
  let registry: Promise<Registry> | undefined;
  app.get(
    "/api/metrics",
    {
      onRequest: requireScope("metrics:read"),
      schema: {
        operationId: "getMetrics",
        summary: "Figures of the running bench",
        ...needsToken("metrics:read"),
        response: {
          200: {
            description: tell({ code: "api.document.metrics" }, documentLanguage),
            content: { "text/plain": { schema: z.string() } },
          },
          ...refusals,
        },
      },
    },
    async (_request, reply) => {
      registry ??= registryOf(watched);
      const { contentType, metrics } = await registry.then(async (one) => ({
        contentType: one.contentType,
        metrics: await one.metrics(),
      }));
      return reply.header("content-type", contentType).serializer(String).send(metrics);
    },
  );
}

/** Most benches are never asked: the library is loaded and begins to count with the first question. */
async function registryOf(watched: Watched): Promise<Registry> {
  const { collectDefaultMetrics, Gauge, Registry } = await import("prom-client");
  const register = new Registry();
  collectDefaultMetrics({ register });
  const gauge = (name: string, help: string, value: () => number | Promise<number>) =>
    new Gauge({
      name: `underhook_${name}`,
      help,
      registers: [register],
      async collect() {
        this.set(await value());
      },
    });
  const { ledger, replication } = watched;
  const health = () => healthOf(watched);
  gauge("ledger_entries", "Entries of the ledger.", async () => (await ledger.head())?.seq ?? 0);
  gauge("ledger_stores", "1 while the ledger can store.", () => Number(health().ledger === "stores"));
  gauge("balance_heard", "1 while the balance in use is heard.", () => Number(health().balance === "heard"));
  if (replication)
    gauge(
      "shared_ledger_entries_to_send",
      "Entries that the shared ledger lacks; NaN before it was reached.",
      () => replication().toSend ?? Number.NaN,
    );
  return register;
}
