import type { AssayRow, AssayView } from "../../../views/assays/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed, inLocale } from "../../../views/numbers.ts";
import { type AssayEntry, assaysOf, standingAssays } from "../../laboratory/assay.ts";
import { type AssayAgainstDensity, assayAgainstDensity } from "../../laboratory/assay-against-density.ts";
import { weighedItem } from "../../laboratory/weighed-item.ts";
import type { Entry } from "../../ledger/entry.ts";
import { isCertain, type SilverShare } from "../../metals/fineness/silver-share.ts";
import { statedBy } from "../../reports/stated.ts";
import { type Manner, whenOf } from "../when.ts";

type Facts = NonNullable<AssayView["facts"]>;

/** The assays that count, one of each metal, held against the density of its piece; the entries are those about the piece. */
export function assayView(subject: string, entries: readonly Entry[], manner: Manner): AssayView {
  const href = `/records/${encodeURIComponent(subject)}/laboratory`;
  const assays = standingAssays(entries);
  if (assays.length === 0) return { href };
  const weighed = weighedItem(statedBy(entries));
  const facts = assays.flatMap((assay) => [
    ...statedFacts(assay, manner),
    ...againstFacts(assayAgainstDensity(assay, weighed), manner.locale),
  ]);
  return { href, facts };
}

/** Every assay of the piece, newest first, with how it stands. */
export function assayRows(entries: readonly Entry[], manner: Manner): AssayRow[] {
  const { locale } = manner;
  const t = tellerOf(locale);
  const counting = new Set(standingAssays(entries).map(({ id }) => id));
  return assaysOf(entries)
    .map(({ entry, excluded }) => ({
      id: entry.id,
      message: `${finenessOf(entry, locale)}; ${entry.body.laboratory}, ${t("assay.report-is", { number: entry.body.report, date: entry.body.date })}; ${writtenIs(entry, manner)}:`,
      standing:
        excluded !== undefined
          ? t("assay.list.excluded", { reason: excluded })
          : counting.has(entry.id)
            ? t("assay.list.counts")
            : t("assay.list.earlier"),
      reason: entry.body.reason ?? "",
      counts: excluded === undefined,
    }))
    .reverse();
}

function finenessOf({ body }: AssayEntry, locale: Locale): string {
  const t = tellerOf(locale);
  const [permille, metal] = [inLocale(body.permille, locale), t(`lots.metals.${body.metal}`)];
  return body.expanded_permille === undefined
    ? t("assay.fineness-is", { permille, metal })
    : t("assay.fineness-with-u", {
        permille,
        u: inLocale(body.expanded_permille, locale),
        k: inLocale(body.coverage_factor ?? "2", locale),
        metal,
      });
}

function writtenIs({ at, body: { by = "" } }: AssayEntry, { locale, zone }: Manner): string {
  const [t, when] = [tellerOf(locale), whenOf(at, zone)];
  return by === "" ? when : t("assay.written-is", { when, by });
}

function statedFacts(assay: AssayEntry, manner: Manner): Facts {
  const { locale } = manner;
  const t = tellerOf(locale);
  const { laboratory, report, method, date } = assay.body;
  return [
    [t("assay.fineness"), finenessOf(assay, locale)],
    [t("assay.laboratory"), laboratory],
    [t("assay.report"), t("assay.report-is", { number: report, date })],
    [t("assay.method"), method],
    [t("assay.written"), writtenIs(assay, manner)],
  ];
}

function againstFacts(against: AssayAgainstDensity, locale: Locale): Facts {
  const t = tellerOf(locale);
  const { byDensity, place, toNearerEnd = 0, withinItsU, fineG, split } = against;
  const rest: Facts = split ? [[t("assay.rest"), splitWords(split, locale)]] : [];
  if (!byDensity || !place) return [[t("assay.by-density"), t("assay.impossible")], ...rest];
  const { permille, lowG, highG } = byDensity;
  const decimals = highG - lowG < 0.05 ? 3 : 2;
  const grams = (mass: number) => fixed(mass, decimals, locale);
  // Whole per mille outwards, as the fineness of a density is told; tenths where an end is near.
  const off = t(`assay.place.${place}`, { permille: fixed(toNearerEnd, toNearerEnd < 10 ? 1 : 0, locale) });
  return [
    [
      t("assay.by-density"),
      t("assay.by-density-is", {
        low: fixed(Math.floor(permille.low), 0, locale),
        high: fixed(Math.ceil(permille.high), 0, locale),
      }),
    ],
    [t("assay.lies"), withinItsU ? t("assay.within-its-u", { place: off }) : off],
    [t("assay.fine-by-assay"), `${grams(fineG)} g`],
    [t("assay.fine-by-density"), t("assay.fine-range", { low: grams(lowG), high: grams(highG) })],
    [
      t("assay.against-low"),
      fineG >= lowG
        ? t("assay.more", { grams: grams(fineG - lowG) })
        : t("assay.less", { grams: grams(lowG - fineG) }),
    ],
    ...rest,
  ];
}

function splitWords(split: SilverShare, locale: Locale): string {
  const t = tellerOf(locale);
  const { share, u } = split;
  if (!isCertain(split)) return t("assay.hardly-a-rest");
  if (share < -2 * u) return t("assay.none-light");
  if (share > 1 + 2 * u) return t("assay.none-heavy");
  if (share < 0) return t("assay.end.copper");
  if (share > 1) return t("assay.end.silver");
  const percent = Math.round(100 * share);
  return t("assay.split", {
    silver: `${percent}`,
    copper: `${100 - percent}`,
    u: `${Math.max(1, Math.ceil(200 * u))}`,
  });
}
