import type { FastifyInstance, FastifyRequest } from "fastify";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { densityText, inLocale } from "../../../views/numbers.ts";
import type { Evaluate } from "../../compute/evaluation.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { printedPdf } from "../../reports/print-thread.ts";
import { isMeasured } from "../../weighing/recorded-statement.ts";
import { frameOf, lookOf } from "../look.ts";
import { dayOf, type Manner } from "../when.ts";
import { noRecordPage } from "./no-record.tsx";
import { type RecordRead, readRecord } from "./record-read.ts";

interface Parts {
  ledger: Ledger;
  evaluate: Evaluate;
  demo: boolean;
}

/** A label for the bag of a piece that has a record. */
export function labelRoutes(app: FastifyInstance, { ledger, evaluate, demo }: Parts): void {
  app.get(
    "/records/:piece/label.pdf",
    async (request: FastifyRequest<{ Params: { piece: string } }>, reply) => {
      const { piece } = request.params;
      const read = await readRecord(await ledger.entriesOf(piece), evaluate);
      if (!read) return noRecordPage(reply, frameOf(request, reply, { path: "/records", demo }), piece);
      const label = { ...labelOf(read, demo, lookOf(request)), code: piece };
      const pdf = await printedPdf({ paper: "label", of: label });
      return reply
        .type("application/pdf")
        .header("content-disposition", "inline; filename=label.pdf")
        .send(pdf);
    },
  );
}

/** Heading and lines of the label. */
function labelOf({ item, stated }: RecordRead, demo: boolean, { locale, zone }: Manner) {
  const t = tellerOf(locale);
  const { statement, piece } = stated;
  const dry = item.captures.find(({ role, excluded }) => role === "dry" && !excluded);
  return {
    heading: piece.ticket ?? item.ticket,
    lines: [
      ...(demo ? [t("label.demonstration")] : []),
      ...(dry ? [`${inLocale(dry.text, locale)} ${dry.unit}`] : []),
      ...(isMeasured(statement)
        ? [`${densityText(statement.density_g_cm3, statement.expanded_g_cm3, locale)} g/cm³`]
        : []),
      item.voided ? t("label.void") : tell({ code: `state.${statement.conformity.state}` }, locale),
      dayOf(item.openedAt, zone),
    ],
  };
}
