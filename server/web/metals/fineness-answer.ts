import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { message } from "../../../calibration/message.ts";
import type { FinenessAnswer } from "../../../views/evidence/fineness.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed } from "../../../views/numbers.ts";
import type { AssayedMelts } from "../../melts/assayed-melts.ts";
import type { FamilyFineness } from "../../metals/fineness/family-fineness.ts";
import { fineMass } from "../../metals/fineness/fine-mass.ts";
import {
  type Fineness,
  goldFineness,
  type PermilleRange,
  silverFineness,
} from "../../metals/fineness/fineness.ts";
import { type GoldColour, goldColours, restByColour } from "../../metals/fineness/rest-of-alloy.ts";
import { meltsForetell } from "../laboratory/assayed-melts-view.ts";

/** Finenesses that are stamped, ‰: ISO 9202 (from memory) and the older carats and coin standards. */
const stamped = {
  gold: [333, 375, 417, 500, 585, 750, 833, 875, 900, 916, 958, 999],
  silver: [800, 835, 900, 925, 958, 999],
} as const;

export type PreciousName = keyof typeof stamped;

/** The colours to choose from, each with what it allows. */
export function colourOptions(locale: Locale): { value: GoldColour; label: string }[] {
  const t = tellerOf(locale);
  return goldColours.map((value) => ({
    value,
    label: t("fineness.colour-allows", {
      colour: message(`fineness.colour.${value}`),
      rest: restByColour[value].rest,
    }),
  }));
}

/** The colour asked for, or any. */
export function colourOf(asked: string | undefined): GoldColour {
  return goldColours.find((one) => one === asked) ?? "any";
}

/** What a density leaves of the fineness of gold or silver, with the fine mass when the mass is known and the melts of this house beside it. */
export function finenessAnswer(
  measured: MeasuredDensity,
  asked: { metal: PreciousName; colour: GoldColour; celsius: number; claimed?: number },
  {
    mass,
    melts,
    stated,
    locale,
  }: {
    mass?: { grams: number; expandedG: number };
    melts: AssayedMelts;
    /** what a record states over everything its claim allows; counts while no colour is chosen */
    stated?: Pick<FamilyFineness, "permille" | "fine_g"> | undefined;
    locale: Locale;
  },
): FinenessAnswer {
  const { metal, colour, celsius } = asked;
  const at = (one: GoldColour) =>
    metal === "gold" ? goldFineness(measured, one, celsius) : silverFineness(measured, celsius);
  const t = tellerOf(locale);
  const found = colour === "any" && stated ? overClaim(at(colour), stated) : at(colour);
  if (!found.possible) return { message: found.message, facts: [] };
  const recipes =
    metal === "gold"
      ? goldColours.map((one) => ({
          name: t(one === "any" ? "fineness.any-colour" : `fineness.colour.${one}`),
          ...at(one).corrected,
        }))
      : [{ name: t("fineness.with-copper"), ...found.corrected }];
  const foretold = metal === "gold" ? meltsForetell(melts, { measured, celsius }, locale) : undefined;
  return {
    message: found.message,
    plot: {
      interval: [found.corrected.low, found.corrected.high],
      recipes: [
        ...recipes,
        ...(foretold?.permille
          ? [{ name: tellerOf(locale)("assay.own-melts.recipe"), ...foretold.permille }]
          : []),
      ],
      standards: stamped[metal].map((fineness) => ({
        fineness,
        name: `${fineness}`,
        ...(fineness === asked.claimed ? { claimed: true } : {}),
      })),
    },
    facts: factsOf(found, massRange(found, mass, stated), locale),
    ...(foretold ? { melts: foretold.message } : {}),
  };
}

/** The fineness, the fine mass that follows, and what the width is made of. */
function factsOf(
  { precious, corrected, plain, widths }: Found,
  grams: { lowG: number; highG: number } | undefined,
  locale: Locale,
): FinenessAnswer["facts"] {
  const t = tellerOf(locale);
  const whole = (x: number) => fixed(x, 0, locale);
  const range = ({ low, high }: PermilleRange) =>
    t("fineness.permille-range", { low_permille: whole(low), high_permille: whole(high) });
  return [
    [t("fineness.fact.fineness"), range(corrected)],
    ...fineMassFacts(precious, grams, locale),
    ...(widths
      ? ([
          [t("fineness.fact.measurement"), `${whole(widths.measurement)} ‰`],
          [t("fineness.fact.law"), `${whole(widths.law)} ‰`],
          [t("fineness.fact.freedom"), `${whole(widths.freedom)} ‰`],
          [t("fineness.fact.plain"), range(plain)],
        ] as const)
      : []),
  ];
}

type Found = Pick<Fineness, "precious" | "corrected" | "plain"> & { widths?: Fineness["widths"] | undefined };

/** The fineness over everything a claim allows, in the place of that over a colour. */
function overClaim(
  { precious, plain, message: sentence }: Fineness,
  { permille: [low, high] }: Pick<FamilyFineness, "permille">,
): Pick<Fineness, "precious" | "corrected" | "plain" | "possible" | "message"> & { widths?: undefined } {
  return {
    precious,
    plain,
    possible: true,
    corrected: { low, high },
    message: message("fineness.lies-between", {
      ...sentence.params,
      precious: message(precious === "Au" ? "fineness.precious.gold" : "fineness.precious.silver"),
      rest: message("fineness.rest.claim"),
      low_permille: Math.floor(low),
      high_permille: Math.ceil(high),
    }),
  };
}

function massRange(
  { corrected, widths }: { corrected: PermilleRange; widths?: Fineness["widths"] | undefined },
  mass: { grams: number; expandedG: number } | undefined,
  stated: Pick<FamilyFineness, "fine_g"> | undefined,
): { lowG: number; highG: number } | undefined {
  if (!widths && stated) return { lowG: stated.fine_g[0], highG: stated.fine_g[1] };
  return mass && fineMass(mass.grams, mass.expandedG, corrected);
}

function fineMassFacts(
  precious: Fineness["precious"],
  range: { lowG: number; highG: number } | undefined,
  locale: Locale,
): [string, string][] {
  if (range === undefined) return [];
  const { lowG, highG } = range;
  const t = tellerOf(locale);
  const decimals = highG - lowG < 0.05 ? 3 : 2;
  return [
    [
      t("fineness.fact.fine-mass", {
        precious: message(precious === "Au" ? "fineness.precious.gold" : "fineness.precious.silver"),
      }),
      t("fineness.gram-range", {
        low_g: fixed(lowG, decimals, locale),
        high_g: fixed(highG, decimals, locale),
      }),
    ],
  ];
}
