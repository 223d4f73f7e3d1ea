import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { standingAssays } from "../../laboratory/assay.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { recordRow } from "../../ledger/projection.ts";
import { shownRecord } from "../../ledger/records.ts";
import { standingBy } from "../../reports/stated.ts";
import { languageOf } from "./language.ts";
import { refused, sendProblem } from "./problem.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";
import { oneRecord, recordPage, recordQuery } from "./shapes.ts";

/** Finished measurements: the list as the Records page filters it, and one with all that was written about it. */
export function recordsOfApi(app: FastifyInstance, ledger: Ledger, requireScope: RequireScope): void {
  const typed = app.withTypeProvider<ZodTypeProvider>();
  typed.get(
    "/api/records",
    {
      onRequest: requireScope("records:read"),
      schema: {
        operationId: "listRecords",
        summary: "Finished measurements, newest first",
        ...needsToken("records:read"),
        querystring: recordQuery,
        response: { 200: recordPage, ...refusals },
      },
    },
    async ({
      query: { q, before, size, count: counting, voided, photo, dry_from_g, dry_to_g, ...filters },
    }) => {
      const given = known({
        ...filters,
        dryFromG: dry_from_g,
        dryToG: dry_to_g,
        photo: photo && photo === "true",
        voided: voided && voided === "true",
      });
      const page = await ledger.records({
        ...(q === undefined ? {} : { search: q }),
        filters: given,
        page: { size, exact: counting === "exact", ...(before === undefined ? {} : { before }) },
      });
      const { records, next, count, countIsFloor } = page;
      return { records, next, count, count_is_floor: countIsFloor };
    },
  );
  typed.get(
    "/api/records/:id",
    {
      onRequest: requireScope("records:read"),
      schema: {
        operationId: "getRecord",
        summary: "One measurement with every entry about its piece",
        ...needsToken("records:read"),
        params: z.strictObject({ id: z.string() }),
        response: { 200: oneRecord, ...refusals, 404: refused },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const entries = await ledger.entriesOf(id);
      const row = recordRow(entries);
      if (row) {
        const stated = entries.some(({ kind }) => kind === "result") ? standingBy(entries) : undefined;
        return {
          record: shownRecord(row),
          statement: stated ? { ...stated.statement } : null,
          laboratory_results: standingAssays(entries).map(({ id: entry, at, body }) => ({
            entry,
            at,
            ...body,
          })),
          amendments: entries.flatMap(({ id: entry, at, kind, body }) =>
            kind === "amendment" ? [{ entry, at, ...body }] : [],
          ),
          entries,
        };
      }
      return sendProblem(reply, 404, languageOf(request), {
        message: message("api.refused.no-record", { id }),
        at: "id",
      });
    },
  );
}

/** The same without the keys that were not given. */
function known<T extends object>(filters: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(filters).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
