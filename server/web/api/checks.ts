import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";
import { checkPage, pageQuery } from "./shapes.ts";

/** The checks of the bench, newest first, passed or not. */
export function checksOfApi(app: FastifyInstance, ledger: Ledger, requireScope: RequireScope): void {
  app.withTypeProvider<ZodTypeProvider>().get(
    "/api/checks",
    {
      onRequest: requireScope("checks:read"),
      schema: {
        operationId: "listChecks",
        summary: "Checks of the bench, newest first",
        ...needsToken("checks:read"),
        querystring: pageQuery,
        response: { 200: checkPage, ...refusals },
      },
    },
    async ({ query: { before, size } }) => {
      const found = await ledger.entries({
        kind: "check",
        newestFirst: true,
        limit: size + 1,
        ...(before === undefined ? {} : { before }),
      });
      const page = found.slice(0, size) as EntryOf<"check">[];
      return {
        checks: page.map(({ seq, id, at, bench, subject, body, hash }) => ({
          seq,
          id,
          at,
          bench,
          of: subject,
          check: body,
          hash,
        })),
        next: found.length > size ? (page.at(-1)?.seq ?? null) : null,
      };
    },
  );
}
