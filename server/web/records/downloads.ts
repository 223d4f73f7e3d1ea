import { Readable } from "node:stream";
import type { FastifyInstance, FastifyReply } from "fastify";
import { tell } from "../../../views/messages/tell.ts";
import { LedgerError } from "../../ledger/error.ts";
import { entriesJson, entrySchema } from "../../ledger/export.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { recordText } from "../../ledger/record-file.ts";
import { lotOf } from "../../lots/evolve.ts";
import { recordsCsv } from "../../reports/records-csv.ts";
import { recordsParquet } from "../../reports/records-parquet.ts";
import { lookOf } from "../look.ts";

/** What can be taken out as files: the list, every entry, their schema, the records of a lot, one record or lot to check. */
export function downloadRoutes(app: FastifyInstance, ledger: Ledger): void {
  const file = (reply: FastifyReply, type: string, name: string) =>
    reply.type(type).header("content-disposition", `attachment; filename="${name}"`);

  app.get("/records.csv", (_request, reply) =>
    file(reply, "text/csv; charset=utf-8", "underhook-records.csv").send(
      Readable.from(recordsCsv(ledger, { zone: app.zone() })),
    ),
  );
  app.get("/records.parquet", (_request, reply) =>
    file(reply, "application/vnd.apache.parquet", "underhook-records.parquet").send(
      Readable.from(recordsParquet(ledger, { zone: app.zone() })),
    ),
  );
  app.get<{ Params: { lot: string } }>("/lots/:lot/records.csv", async (request, reply) => {
    const lot = lotOf(await ledger.entriesOf(request.params.lot));
    if (!lot) return reply.callNotFound();
    const name = `underhook-lot-${lot.name.replace(/[^\w-]+/g, "-")}.csv`;
    return file(reply, "text/csv; charset=utf-8", name).send(
      Readable.from(recordsCsv(ledger, { lot: lot.id, zone: app.zone() })),
    );
  });
  app.get("/records.jsonl", (_request, reply) =>
    file(reply, "application/jsonl; charset=utf-8", "underhook-entries.jsonl").send(
      Readable.from(entriesJson(ledger)),
    ),
  );
  app.get("/records-schema.json", (_request, reply) =>
    file(reply, "application/schema+json; charset=utf-8", "underhook-entry-schema.json").send(
      JSON.stringify(entrySchema(), null, 2),
    ),
  );
  for (const subjects of ["/records", "/lots"])
    app.get<{ Params: { subject: string } }>(`${subjects}/:subject/file`, async (request, reply) => {
      const { subject } = request.params;
      try {
        const name = subject.replace(/[^\w-]+/g, "-");
        return file(reply, "application/json; charset=utf-8", `underhook-record-${name}.json`).send(
          recordText(await ledger.recordFile(subject)),
        );
      } catch (error) {
        if (!(error instanceof LedgerError)) throw error;
        return reply
          .code(error.kind === "missing" ? 404 : 422)
          .removeHeader("content-disposition")
          .type("text/plain; charset=utf-8")
          .send(tell(error, lookOf(request).locale));
      }
    });
}
