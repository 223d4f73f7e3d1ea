import type { FastifyInstance } from "fastify";
import { fixed, inLocale, plusMinus } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { MetalPrice, type MetalPriceView, metalPriceFields } from "../../../views/records/metal-price.tsx";
import { type Locale, words } from "../../../views/words/index.ts";
import { toldValue } from "../../../views/words/told.ts";
import { recordedDensity } from "../../conformity/recorded-density.ts";
import { type AssayEntry, standingAssay } from "../../laboratory/assay.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { payFor, rounded } from "../../lots/payout.ts";
import { fineMass } from "../../metals/fineness/fine-mass.ts";
import { goldFineness, silverFineness } from "../../metals/fineness/fineness.ts";
import type { Library } from "../../metals/library.ts";
import { after, type Piece } from "../../weighing/piece.ts";
import { statedOf } from "../evidence/evidence.tsx";
import { NumberEntries } from "../evidence/evidence-form.ts";
import { counting } from "../evidence/evidence-made.ts";
import { type MeasuredPiece, standingOf } from "../evidence/evidence-standing.ts";
import { measuredPiece } from "../evidence/evidence-view.ts";
import { frameOf } from "../look.ts";
import { colourOf, colourOptions } from "../metals/fineness-answer.ts";
import { html } from "../page-request.ts";
import { noRecordPage } from "../records/no-record.tsx";
import { nameIn } from "../records/record-view.ts";
import { type TypedPrice, typedPrice } from "./typed-price.ts";

/** Look-alikes named; the rest are counted. */
const namedAlive = 6;

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
      const { metalPrice: say } = words(locale);
      if (!stated) return noRecordPage(reply, around, subject);
      const piece = measuredPiece(stated, library());
      const { response, claim } = piece;
      const family = claim === undefined ? "gold" : library().metal(claim).family;
      const asked = (name: string) => request.query[name] ?? "";
      const metal = (asked("metal") || family) === "silver" ? "silver" : "gold";
      const colour = colourOf(asked("colour"));
      const values = {
        ...(Object.fromEntries(
          metalPriceFields.map((name) => [name, asked(name)]),
        ) as MetalPriceView["values"]),
        metal,
        colour,
      };
      const numbers = new NumberEntries(values, locale);
      const price = asked("price") === "" ? undefined : typedPrice(values, numbers);
      const tests = entries.reduce<Piece | undefined>(after, undefined)?.tests ?? [];
      const standing = standingOf(piece, counting(tests), library());
      const href = `/records/${encodeURIComponent(subject)}`;
      const view: MetalPriceView = {
        record: {
          href,
          ticket: stated.piece.ticket ?? subject,
          density: `${plusMinus(response.density_g_cm3, response.expanded_g_cm3, locale)} g/cm³`,
          mass: `${plusMinus(response.mass_g, 2 * response.u_mass_g, locale)} g`,
        },
        action: `${href}/price`,
        values,
        colours: colourOptions,
        problems: numbers.problems,
        warnings: [
          ...(stated.voided ? [say.voided] : []),
          ...(standing.state === "excluded" && claim !== undefined
            ? [say.disagrees(toldValue(nameIn(library(), claim), locale))]
            : []),
        ],
        ...(price && numbers.problems.length === 0
          ? { answer: answerOf(piece, { metal, colour, price, assay: standingAssay(entries), locale }) }
          : {}),
        alive: aliveWords(
          standing.weighed.alive
            .filter((one) => one.family !== metal)
            .map(({ name }) => toldValue(name, locale)),
          locale,
        ),
      };
      const title = say.title(view.record.ticket);
      const status = numbers.problems.length > 0 ? 422 : 200;
      return html(reply, page({ ...around, title, main: <MetalPrice {...view} /> }), status);
    },
  );
}

function answerOf(
  { response, confidence, celsius }: MeasuredPiece,
  {
    metal,
    colour,
    price,
    assay,
    locale,
  }: {
    metal: "gold" | "silver";
    colour: ReturnType<typeof colourOf>;
    price: TypedPrice;
    assay: AssayEntry | undefined;
    locale: Locale;
  },
): NonNullable<MetalPriceView["answer"]> {
  const { metalPrice: say, payout, lots } = words(locale);
  const measured = recordedDensity(response, confidence);
  const found =
    metal === "gold" ? goldFineness(measured, colour, celsius) : silverFineness(measured, celsius);
  if (!found.possible) return { impossible: say.impossible };
  const { low, high } = found.corrected;
  const { lowG, highG } = fineMass(response.mass_g, 2 * response.u_mass_g, found.corrected);
  // The whole price of the metal: what a dealer would take off is not known. Each end is rounded outwards.
  const pay = (fineG: number) => payFor(fineG, { ...price, ratePercent: "100" });
  const money = (fineG: number, direction: "down" | "up" | "half-even") =>
    fixed(rounded(pay(fineG), direction), 2, locale);
  const decimals = highG - lowG < 0.05 ? 3 : 2;
  const { facts } = say;
  return {
    range: say.range(money(lowG, "down"), money(highG, "up"), price.currency),
    condition: say.conditions[metal],
    facts: [
      [facts.mass, `${plusMinus(response.mass_g, 2 * response.u_mass_g, locale)} g`],
      [
        facts.fineness,
        facts.finenessIs(fixed(Math.floor(low), 0, locale), fixed(Math.ceil(high), 0, locale)),
      ],
      [
        `${facts.fine} (${lots.metals[metal]})`,
        lots.totals.range(fixed(lowG, decimals, locale), fixed(highG, decimals, locale), "g"),
      ],
      [facts.price, facts.priceIs(inLocale(price.price, locale), price.currency, payout.pers[price.per])],
      [facts.source, facts.sourceIs(price.source, price.at)],
      ...(assay?.body.metal === metal
        ? [
            [
              facts.laboratory,
              facts.laboratoryIs(
                inLocale(assay.body.permille, locale),
                money((response.mass_g * Number(assay.body.permille)) / 1000, "half-even"),
                price.currency,
              ),
            ] as const,
          ]
        : []),
    ],
  };
}

/** The look-alikes that are no alloy of the metal asked about. */
function aliveWords(names: readonly string[], locale: Locale): string {
  const say = words(locale).metalPrice;
  if (names.length === 0) return say.noneKnown;
  const shown = names.slice(0, namedAlive).join(", ");
  return say.alive(names.length > namedAlive ? say.andMore(shown, names.length - namedAlive) : shown);
}
