import type { FastifyInstance } from "fastify";
import { keyed } from "../../../calibration/keyed.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { MetalPrice, metalPriceFields } from "../../../views/records/metal-price.tsx";
import { standingAssay } from "../../laboratory/assay.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { statedOf } from "../evidence/evidence.tsx";
import { measuredItem } from "../evidence/evidence-view.ts";
import { readForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { colourOf, colourOptions } from "../metals/fineness-answer.ts";
import { html } from "../page-request.ts";
import { noRecordPage } from "../records/no-record.tsx";
import { foundPriceForm } from "../settlements/settlement-forms.ts";
import { type AskedPrice, metalPriceOf } from "./metal-price-view.ts";

interface MetalPriceParts {
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
}

/** What the fine metal of one recorded piece comes to at a price the asker enters. Nothing is stored. */
export function metalPriceRoutes(app: FastifyInstance, { ledger, demo, library }: MetalPriceParts): void {
  app.get<{ Params: { piece: string }; Querystring: Record<string, string | undefined> }>(
    "/records/:piece/price",
    async (request, reply) => {
      const subject = request.params.piece;
      const around = frameOf(request, reply, { path: "/records", demo });
      const { locale } = around;
      const entries = await ledger.entriesOf(subject);
      const stated = statedOf(entries);
      if (!stated) return noRecordPage(reply, around, subject);
      const item = measuredItem(stated, library());
      const { values, metal, colour } = askedOf(request.query, item.claim, library());
      const { price, problems } = typedPrice(values, { zone: around.zone, now: new Date() }, locale);
      const assay = standingAssay(entries, metal);
      const asked = { metal, colour, price, assay, locale };
      const voided = stated.voided !== undefined;
      const { density, mass, ...found } = metalPriceOf(item, library(), voided, asked);
      const href = `/records/${encodeURIComponent(subject)}`;
      const record = { href, ticket: stated.piece.ticket ?? subject, density, mass };
      const form = { action: `${href}/price`, values, colours: colourOptions(locale), problems };
      const title = tellerOf(locale)("metal-price.title", { ticket: record.ticket });
      const status = problems.length > 0 ? 422 : 200;
      return html(
        reply,
        page({ ...around, title, main: <MetalPrice {...form} {...found} record={record} /> }),
        status,
      );
    },
  );
}

/** What the query asks about; a metal that it does not name is that of the claim. */
function askedOf(query: Record<string, string | undefined>, claim: string | undefined, library: Library) {
  const asked = (name: string) => query[name] ?? "";
  const family = claim !== undefined && library.has(claim) ? library.metal(claim).family : "gold";
  const metal: AskedPrice["metal"] = (asked("metal") || family) === "silver" ? "silver" : "gold";
  const colour = colourOf(asked("colour"));
  return { values: { ...keyed(metalPriceFields, asked), metal, colour }, metal, colour };
}

/** No price where the field is empty: then nothing was asked yet. */
function typedPrice(values: { price: string }, place: { zone: string; now: Date }, locale: Locale) {
  if (values.price === "") return { price: undefined, problems: [] };
  const read = readForm(foundPriceForm(place), values, locale);
  return "values" in read
    ? { price: read.values, problems: [] }
    : { price: undefined, problems: read.problems };
}
