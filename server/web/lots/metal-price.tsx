import type { FastifyInstance } from "fastify";
import { exactly, type Fraction, product, type Rounding } from "../../../calibration/fraction.ts";
import { keyed } from "../../../calibration/keyed.ts";
import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { type Message, message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { densityText, fixed, inLocale, plusMinus } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { MetalPrice, type MetalPriceView, metalPriceFields } from "../../../views/records/metal-price.tsx";
import { recordedDensity } from "../../conformity/recorded-density.ts";
import { type AssayEntry, standingAssay } from "../../laboratory/assay.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { calledById } from "../../metals/composites/composite-by-id.ts";
import { fineMass } from "../../metals/fineness/fine-mass.ts";
import { goldFineness, silverFineness } from "../../metals/fineness/fineness.ts";
import type { Library } from "../../metals/library.ts";
import { money, payFor } from "../../settlements/price.ts";
import { recordedFineness } from "../../weighing/recorded-fineness.ts";
import { statedOf } from "../evidence/evidence.tsx";
import { type MeasuredItem, measuredItem } from "../evidence/evidence-view.ts";
import { readForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { colourOf, colourOptions } from "../metals/fineness-answer.ts";
import { html } from "../page-request.ts";
import { noRecordPage } from "../records/no-record.tsx";
import { type FoundPrice, foundPriceForm } from "../settlements/settlement-forms.ts";

/** So many others are named; the rest stands in the record. */
const named = 6;

interface MetalPriceParts {
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
  /** time zone of the place */
  zone: () => string;
}

/** What the fine metal of one recorded piece comes to at a price the asker enters. Nothing is stored. */
export function metalPriceRoutes(
  app: FastifyInstance,
  { ledger, demo, library, zone }: MetalPriceParts,
): void {
  app.get<{ Params: { piece: string }; Querystring: Record<string, string | undefined> }>(
    "/records/:piece/price",
    async (request, reply) => {
      const subject = request.params.piece;
      const around = frameOf(request, reply, { path: "/records", demo });
      const { locale } = around;
      const entries = await ledger.entriesOf(subject);
      const stated = statedOf(entries);
      const t = tellerOf(locale);
      if (!stated) return noRecordPage(reply, around, subject);
      const item = measuredItem(stated, library());
      const { statement, claim } = item;
      const known = claim !== undefined && library().has(claim);
      const family = known ? library().metal(claim).family : "gold";
      const asked = (name: string) => request.query[name] ?? "";
      const metal = (asked("metal") || family) === "silver" ? "silver" : "gold";
      const colour = colourOf(asked("colour"));
      const values = {
        ...keyed(metalPriceFields, asked),
        metal,
        colour,
      };
      const place = { zone: zone(), now: new Date() };
      const typed = asked("price") === "" ? undefined : readForm(foundPriceForm(place), values, locale);
      const problems = typed && "problems" in typed ? typed.problems : [];
      const price = typed && "values" in typed ? typed.values : undefined;
      const href = `/records/${encodeURIComponent(subject)}`;
      const view: MetalPriceView = {
        record: {
          href,
          ticket: stated.piece.ticket ?? subject,
          density: `${densityText(statement.density_g_cm3, statement.expanded_g_cm3, locale)} g/cm³`,
          mass: `${plusMinus(statement.mass_g, 2 * statement.u_mass_g, locale)} g`,
        },
        action: `${href}/price`,
        values,
        colours: colourOptions(locale),
        problems,
        warnings: [
          ...(stated.voided ? [t("metal-price.voided")] : []),
          ...(statement.conformity.state === "excluded" && claim !== undefined
            ? [t("metal-price.disagrees", { claim: calledById(claim, library()) })]
            : []),
        ],
        ...(price
          ? {
              answer: answerOf(item, library(), {
                metal,
                colour,
                price,
                assay: standingAssay(entries, metal),
                locale,
              }),
            }
          : {}),
        others: othersThan(metal, item, library()),
      };
      const title = t("metal-price.title", { ticket: view.record.ticket });
      const status = problems.length > 0 ? 422 : 200;
      return html(reply, page({ ...around, title, main: <MetalPrice {...view} /> }), status);
    },
  );
}

/** For a colour that was chosen, or a metal that is not the claimed one. */
function finenessOfColour(
  measured: MeasuredDensity,
  { mass_g, u_mass_g }: MeasuredItem["statement"],
  {
    metal,
    colour,
    celsius,
  }: { metal: "gold" | "silver"; colour: ReturnType<typeof colourOf>; celsius: number },
): { permille: [number, number]; fine_g: [number, number] } | null {
  const found =
    metal === "gold" ? goldFineness(measured, colour, celsius) : silverFineness(measured, celsius);
  if (!found.possible) return null;
  const { low, high } = found.corrected;
  const { lowG, highG } = fineMass(mass_g, 2 * u_mass_g, found.corrected);
  return { permille: [low, high], fine_g: [lowG, highG] };
}

function answerOf(
  { statement, confidence, celsius }: MeasuredItem,
  library: Library,
  {
    metal,
    colour,
    price,
    assay,
    locale,
  }: {
    metal: "gold" | "silver";
    colour: ReturnType<typeof colourOf>;
    price: FoundPrice;
    assay: AssayEntry | undefined;
    locale: Locale;
  },
): NonNullable<MetalPriceView["answer"]> {
  const t = tellerOf(locale);
  const stated = colour === "any" ? recordedFineness(statement, { confidence, celsius, library }) : null;
  const found =
    stated?.element === (metal === "gold" ? "Au" : "Ag")
      ? stated
      : finenessOfColour(recordedDensity(statement, confidence), statement, { metal, colour, celsius });
  if (!found) return { impossible: t("metal-price.impossible") };
  const [low, high] = found.permille;
  const [lowG, highG] = found.fine_g;
  // The whole price of the metal: what a dealer would take off is not known. Each end is rounded outwards.
  const inMoney = (fineG: Fraction, direction: Rounding) =>
    inLocale(money(payFor(fineG, { ...price, ratePercent: "100" }), price.currency, direction), locale);
  const ofDensity = (fineG: number) => exactly(fineG.toFixed(6));
  const decimals = highG - lowG < 0.05 ? 3 : 2;
  return {
    range: t("metal-price.range", {
      low: inMoney(ofDensity(lowG), "down"),
      high: inMoney(ofDensity(highG), "up"),
      currency: price.currency,
    }),
    condition: t(`metal-price.conditions.${metal}`),
    facts: [
      [t("metal-price.facts.mass"), `${plusMinus(statement.mass_g, 2 * statement.u_mass_g, locale)} g`],
      [
        t("metal-price.facts.fineness"),
        t("metal-price.facts.fineness-is", {
          low: fixed(Math.floor(low), 0, locale),
          high: fixed(Math.ceil(high), 0, locale),
        }),
      ],
      [
        `${t("metal-price.facts.fine")} (${t(`lots.metals.${metal}`)})`,
        t("lots.totals.range", {
          low: fixed(lowG, decimals, locale),
          high: fixed(highG, decimals, locale),
          unit: "g",
        }),
      ],
      [
        t("metal-price.facts.price"),
        t("metal-price.facts.price-is", {
          price: inLocale(price.price, locale),
          currency: price.currency,
          per: t(`payout.pers.${price.per}`),
        }),
      ],
      [
        t("metal-price.facts.source"),
        t("metal-price.facts.source-is", { source: price.source, at: price.at }),
      ],
      ...(assay?.body.metal === metal
        ? [
            [
              t("metal-price.facts.laboratory"),
              t("metal-price.facts.laboratory-is", {
                permille: inLocale(assay.body.permille, locale),
                money: inMoney(
                  product(ofDensity(statement.mass_g), exactly(assay.body.permille), exactly("0.001")),
                  "half-even",
                ),
                currency: price.currency,
              }),
            ] as const,
          ]
        : []),
    ],
  };
}

/** What is not excluded and is no alloy of the metal asked about. */
function othersThan(
  metal: "gold" | "silver",
  { statement: { not_excluded } }: MeasuredItem,
  library: Library,
): Message {
  const others = not_excluded
    .filter(({ id }) => !library.has(id) || library.metal(id).family !== metal)
    .map(({ id }) => calledById(id, library));
  if (others.length === 0) return message("metal-price.none-known");
  const names = others.slice(0, named);
  return message("metal-price.not-excluded", {
    names: others.length > named ? [...names, message("group.others")] : names,
  });
}
