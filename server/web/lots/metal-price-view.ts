import { exactly, type Fraction, product, type Rounding } from "../../../calibration/fraction.ts";
import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { type Message, message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { densityText, fixed, inLocale, plusMinus } from "../../../views/numbers.ts";
import type { MetalPriceView } from "../../../views/records/metal-price.tsx";
import { recordedDensity } from "../../conformity/recorded-density.ts";
import type { AssayEntry } from "../../laboratory/assay.ts";
import { calledById } from "../../metals/composites/composite-by-id.ts";
import { fineMass } from "../../metals/fineness/fine-mass.ts";
import { goldFineness, silverFineness } from "../../metals/fineness/fineness.ts";
import type { Library } from "../../metals/library.ts";
import { money, payFor } from "../../settlements/price.ts";
import { recordedFineness } from "../../weighing/recorded-fineness.ts";
import type { MeasuredItem } from "../evidence/evidence-view.ts";
import type { colourOf } from "../metals/fineness-answer.ts";
import type { FoundPrice } from "../settlements/settlement-forms.ts";

/** So many others are named; the rest stands in the record. */
const named = 6;

/** What is asked of one piece: the metal, its colour, and a price once one is typed. */
export interface AskedPrice {
  metal: "gold" | "silver";
  colour: ReturnType<typeof colourOf>;
  price: FoundPrice | undefined;
  assay: AssayEntry | undefined;
}

/** The measured piece as the page shows it, what is warned of, its answer once a price stands, and the other metals. */
export function metalPriceOf(
  item: MeasuredItem,
  library: Library,
  voided: boolean,
  { locale, ...asked }: AskedPrice & { locale: Locale },
): Pick<MetalPriceView, "warnings" | "answer" | "others"> & { density: string; mass: string } {
  const t = tellerOf(locale);
  const { statement, claim } = item;
  const { price } = asked;
  return {
    density: `${densityText(statement.density_g_cm3, statement.expanded_g_cm3, locale)} g/cm³`,
    mass: massText(statement, locale),
    warnings: [
      ...(voided ? [t("metal-price.voided")] : []),
      ...(statement.conformity.state === "excluded" && claim !== undefined
        ? [t("metal-price.disagrees", { claim: calledById(claim, library) })]
        : []),
    ],
    ...(price && { answer: answerOf(item, library, { ...asked, price, locale }) }),
    others: othersThan(asked.metal, item, library),
  };
}

const massText = ({ mass_g, u_mass_g }: MeasuredItem["statement"], locale: Locale) =>
  `${plusMinus(mass_g, 2 * u_mass_g, locale)} g`;

/** In ‰ and in g of fine metal, each from low to high. */
interface FoundFineness {
  permille: readonly [number, number];
  fine_g: readonly [number, number];
}

/** For a colour that was chosen, or a metal that is not the claimed one. */
function finenessOfColour(
  measured: MeasuredDensity,
  { mass_g, u_mass_g }: MeasuredItem["statement"],
  { metal, colour, celsius }: Pick<AskedPrice, "metal" | "colour"> & { celsius: number },
): FoundFineness | null {
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
  { metal, colour, price, assay, locale }: AskedPrice & { price: FoundPrice; locale: Locale },
): NonNullable<MetalPriceView["answer"]> {
  const t = tellerOf(locale);
  const stated = colour === "any" ? recordedFineness(statement, { confidence, celsius, library }) : null;
  const found =
    stated?.element === (metal === "gold" ? "Au" : "Ag")
      ? stated
      : finenessOfColour(recordedDensity(statement, confidence), statement, { metal, colour, celsius });
  if (!found) return { impossible: t("metal-price.impossible") };
  const [lowG, highG] = found.fine_g;
  // The whole price of the metal: what a dealer would take off is not known. Each end is rounded outwards.
  const inMoney = (fineG: Fraction, direction: Rounding) =>
    inLocale(money(payFor(fineG, { ...price, ratePercent: "100" }), price.currency, direction), locale);
  const ofDensity = (fineG: number) => exactly(fineG.toFixed(6));
  return {
    range: t("metal-price.range", {
      low: inMoney(ofDensity(lowG), "down"),
      high: inMoney(ofDensity(highG), "up"),
      currency: price.currency,
    }),
    condition: t(`metal-price.conditions.${metal}`),
    facts: [
      [t("metal-price.facts.mass"), massText(statement, locale)],
      ...finenessFacts(metal, found, locale),
      ...priceFacts(price, locale),
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

type Fact = readonly [name: string, value: string];

function finenessFacts(
  metal: AskedPrice["metal"],
  { permille: [low, high], fine_g: [lowG, highG] }: FoundFineness,
  locale: Locale,
): Fact[] {
  const t = tellerOf(locale);
  const decimals = highG - lowG < 0.05 ? 3 : 2;
  return [
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
  ];
}

function priceFacts({ price, currency, per, source, at }: FoundPrice, locale: Locale): Fact[] {
  const t = tellerOf(locale);
  return [
    [
      t("metal-price.facts.price"),
      t("metal-price.facts.price-is", {
        price: inLocale(price, locale),
        currency,
        per: t(`payout.pers.${per}`),
      }),
    ],
    [t("metal-price.facts.source"), t("metal-price.facts.source-is", { source, at })],
  ];
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
