import type { AssayRow, AssayView } from "../../../views/assays/view.ts";
import { fixed, inLocale } from "../../../views/numbers.ts";
import { type Locale, words } from "../../../views/words/index.ts";
import { type AssayEntry, assaysOf, standingAssay } from "../../laboratory/assay.ts";
import { type AssayAgainstDensity, assayAgainstDensity } from "../../laboratory/assay-against-density.ts";
import { weighedPiece } from "../../laboratory/weighed-piece.ts";
import type { Entry } from "../../ledger/entry.ts";
import { isCertain } from "../../metals/fineness/house-split.ts";
import type { SilverShare } from "../../metals/fineness/silver-share.ts";
import { statedBy } from "../../reports/stated.ts";
import { whenOf } from "../when.ts";

type Facts = NonNullable<AssayView["facts"]>;

/** The assay that counts, held against the density of its piece; the entries are those about the piece. */
export function assayView(subject: string, entries: readonly Entry[], locale: Locale): AssayView {
  const href = `/records/${encodeURIComponent(subject)}/laboratory`;
  const assay = standingAssay(entries);
  if (!assay) return { href };
  const against = assayAgainstDensity(assay, weighedPiece(statedBy(entries)));
  return { href, facts: [...statedFacts(assay, locale), ...againstFacts(against, locale)] };
}

/** Every assay of the piece, newest first, with how it stands. */
export function assayRows(entries: readonly Entry[], locale: Locale): AssayRow[] {
  const say = words(locale).assay;
  const counting = standingAssay(entries)?.id;
  return assaysOf(entries)
    .map(({ entry, setAside }) => ({
      id: entry.id,
      says: `${finenessOf(entry, locale)}; ${entry.body.laboratory}, ${say.reportIs(entry.body.report, entry.body.date)}; ${say.writtenIs(whenOf(entry.at), entry.body.by ?? "")}:`,
      standing:
        setAside !== undefined
          ? say.list.setAside(setAside)
          : entry.id === counting
            ? say.list.counts
            : say.list.earlier,
      reason: entry.body.reason ?? "",
      counts: setAside === undefined,
    }))
    .reverse();
}

function finenessOf({ body }: AssayEntry, locale: Locale): string {
  const { assay: say, lots } = words(locale);
  const [permille, metal] = [inLocale(body.permille, locale), lots.metals[body.metal]];
  return body.expanded_permille === undefined
    ? say.finenessIs(permille, metal)
    : say.finenessWithU(
        permille,
        inLocale(body.expanded_permille, locale),
        inLocale(body.coverage_factor ?? "2", locale),
        metal,
      );
}

function statedFacts(assay: AssayEntry, locale: Locale): Facts {
  const say = words(locale).assay;
  const { laboratory, report, method, date, by = "" } = assay.body;
  return [
    [say.fineness, finenessOf(assay, locale)],
    [say.laboratory, laboratory],
    [say.report, say.reportIs(report, date)],
    [say.method, method],
    [say.written, say.writtenIs(whenOf(assay.at), by)],
  ];
}

function againstFacts(against: AssayAgainstDensity, locale: Locale): Facts {
  const say = words(locale).assay;
  const { byDensity, place, toNearerEnd = 0, withinItsU, fineG, split } = against;
  const rest: Facts = split ? [[say.rest, splitWords(split, locale)]] : [];
  if (!byDensity || !place) return [[say.byDensity, say.impossible], ...rest];
  const { permille, lowG, highG } = byDensity;
  const decimals = highG - lowG < 0.05 ? 3 : 2;
  const grams = (mass: number) => fixed(mass, decimals, locale);
  // Whole per mille outwards, as the fineness of a density is told; tenths where an end is near.
  const off = say.place[place](fixed(toNearerEnd, toNearerEnd < 10 ? 1 : 0, locale));
  return [
    [
      say.byDensity,
      say.byDensityIs(fixed(Math.floor(permille.low), 0, locale), fixed(Math.ceil(permille.high), 0, locale)),
    ],
    [say.lies, withinItsU ? say.withinItsU(off) : off],
    [say.fineByAssay, `${grams(fineG)} g`],
    [say.fineByDensity, say.fineRange(grams(lowG), grams(highG))],
    [say.againstLow, fineG >= lowG ? say.more(grams(fineG - lowG)) : say.less(grams(lowG - fineG))],
    ...rest,
  ];
}

function splitWords(split: SilverShare, locale: Locale): string {
  const say = words(locale).assay;
  const { share, u } = split;
  if (!isCertain(split)) return say.hardlyARest;
  if (share < -2 * u) return say.noneLight;
  if (share > 1 + 2 * u) return say.noneHeavy;
  if (share < 0) return say.end.copper;
  if (share > 1) return say.end.silver;
  const percent = Math.round(100 * share);
  return say.split(`${percent}`, `${100 - percent}`, `${Math.max(1, Math.ceil(200 * u))}`);
}
