import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import type { Ledger } from "../../ledger/ledger.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";
import { entryFeed, feedQuery } from "./shapes.ts";

/**
 * Everything the ledger holds, oldest first, for a system that follows the bench: results, amendments, voids, closed
 * lots. It asks again with `next`, and misses nothing and gets nothing twice.
 */
export function entriesOfApi(app: FastifyInstance, ledger: Ledger, requireScope: RequireScope): void {
  app.withTypeProvider<ZodTypeProvider>().get(
    "/api/entries",
    {
      onRequest: requireScope("entries:read"),
      schema: {
        operationId: "followEntries",
        summary: "Entries of the ledger after one, oldest first",
        ...needsToken("entries:read"),
        querystring: feedQuery,
        response: { 200: entryFeed, ...refusals },
      },
    },
    async ({ query: { after, size, kind } }) => {
      const found = await ledger.entries({ after, limit: size + 1, ...(kind === undefined ? {} : { kind }) });
      const entries = found.slice(0, size);
      return { entries, next: entries.at(-1)?.seq ?? after, more: found.length > size };
    },
  );
}
