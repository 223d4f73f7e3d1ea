import { exactly, less, product, ratio, roundedText } from "../../../calibration/fraction.ts";
import { message } from "../../../calibration/message.ts";
import type { MeltsPage, MeltView } from "../../../views/melts/view.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import { type Agreement, agreementsOf } from "../../melts/agreement.ts";
import type { Melt } from "../../melts/melt.ts";
import { thousand, written } from "../../settlements/mass-text.ts";
import { type Manner, whenOf } from "../when.ts";

type Names = (lot: string) => string;

/** One line of the list of melts. */
export function meltRow(melt: Melt, names: Names, { locale, zone }: Manner): MeltsPage["melts"][number] {
  const t = tellerOf(locale);
  return {
    id: melt.id,
    name: melt.name,
    made: whenOf(melt.madeAt, zone),
    lots: melt.lots.map(names).join(", "),
    before: `${inLocale(melt.before.text, locale)} ${melt.before.unit}`,
    state: t(melt.settled ? "melts.is-settled" : "melts.is-open"),
  };
}

/** The page of a melt, but for the form that was sent and the token. */
export function meltView(
  melt: Melt,
  names: Names,
  manner: Manner,
): Omit<MeltView, "sent" | "values" | "problems" | "csrfToken" | "about"> {
  return {
    id: melt.id,
    facts: factsOf(melt, names, manner),
    agreements: agreementsOf(melt).map((one) => agreementRow(one, manner)),
    assays: melt.assays.map((one) => assayRow(one, manner)),
    settlings: melt.settlings.map((one) => settlingSaid(one, manner)).reverse(),
    isSettled: melt.settled !== undefined,
    hasDrillings: melt.drillings.length > 0,
  };
}

function factsOf(melt: Melt, names: Names, { locale, zone }: Manner): MeltView["facts"] {
  const t = tellerOf(locale);
  const { before, poured, lots, lots_g, reason, by, madeAt, drillings } = melt;
  const shown = ({ text, unit }: { text: string; unit: string }) => `${inLocale(text, locale)} ${unit}`;
  const lossG = poured && less(exactly(before.grams), exactly(poured.body.after.grams));
  const percent =
    lossG && roundedText(ratio(product(lossG, exactly("100")), exactly(before.grams)), 2, "half-even");
  return [
    [t("melts.lots"), lots.map(names).join(", ")],
    [t("melts.lots-mass"), `${inLocale(lots_g, locale)} g`],
    [t("melts.before"), shown(before)],
    [t("settlement.reason"), reason ?? ""],
    [t("melts.made"), t("assay.written-is", { when: whenOf(madeAt, zone), by })],
    [t("melts.after"), poured ? shown(poured.body.after) : ""],
    [
      t("melts.loss"),
      lossG && percent !== undefined
        ? t("melts.loss-is", { grams: inLocale(written(lossG), locale), percent: inLocale(percent, locale) })
        : "",
    ],
    [
      t("melts.drillings"),
      drillings
        .map(({ body: { drilling, mass } }) => (mass ? `${drilling} (${shown(mass)})` : drilling))
        .join(", "),
    ],
  ];
}

function agreementRow(
  { metal, sides, result, missing }: Agreement,
  { locale }: Manner,
): MeltView["agreements"][number] {
  const t = tellerOf(locale);
  const permille = (text: string) => inLocale(text, locale);
  return {
    metal: t(`lots.metals.${metal}`),
    sides: sides
      .map(({ side, mean, apart, entries }) =>
        t("melts.side-found", {
          side: t(`melts.sides.${side}`),
          permille: permille(written(mean)),
          assays: entries.length,
          apart: permille(written(apart)),
        }),
      )
      .join("; "),
    follows: result
      ? message("melts.result", {
          permille: { decimal: result.permille },
          from: message(`melts.from.${result.from}`),
        })
      : (missing ?? ""),
  };
}

function assayRow(
  { entry, excluded }: Melt["assays"][number],
  { locale, zone }: Manner,
): MeltView["assays"][number] {
  const t = tellerOf(locale);
  const {
    drilling,
    side,
    metal,
    permille,
    expanded_permille: u,
    laboratory,
    report,
    method,
    date,
    by,
  } = entry.body;
  const found =
    u === undefined
      ? t("assay.fineness-is", { permille: inLocale(permille, locale), metal: t(`lots.metals.${metal}`) })
      : t("assay.fineness-with-u", {
          permille: inLocale(permille, locale),
          u: inLocale(u, locale),
          k: "2",
          metal: t(`lots.metals.${metal}`),
        });
  const standing = excluded === undefined ? "" : ` ${t("assay.list.excluded", { reason: excluded })}`;
  return {
    id: entry.id,
    message: `${drilling}, ${t(`melts.sides.${side}`)}: ${found}; ${laboratory}, ${t("assay.report-is", { number: report, date })}, ${method}; ${t("assay.written-is", { when: whenOf(entry.at, zone), by })}${standing}`,
    counts: excluded === undefined,
  };
}

function settlingSaid({ at, body }: Melt["settlings"][number], { locale, zone }: Manner): string {
  const t = tellerOf(locale);
  const shares = body.results.map(({ metal, permille, from }) => {
    const fineG = ratio(product(exactly(body.after_g), exactly(permille)), thousand);
    const inOf = ratio(product(fineG, thousand), exactly(body.before_g));
    return t("melts.settled-metal", {
      metal: t(`lots.metals.${metal}`),
      permille: inLocale(permille, locale),
      from: t(`melts.from.${from}`),
      fine: inLocale(roundedText(fineG, 4, "half-even"), locale),
      yield: inLocale(roundedText(inOf, 2, "half-even"), locale),
    });
  });
  return `${t("assay.written-is", { when: whenOf(at, zone), by: body.by })}: ${shares.join("; ")}`;
}
