import { momentText } from "../../calibration/local-time.ts";
import type { Locale } from "../../views/messages/language.ts";
import { tell, tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";
import type { Line, Organisation } from "../../views/reports/report.ts";
import type { Closing, Lot } from "../lots/lot.ts";
import type { LotPrice } from "../settlements/price.ts";
import { Paper } from "./pdf-paper.ts";
import { sheetView } from "./settlement-sheet.ts";

/** What the paper of a settlement says beside the settlement itself. */
export interface SettlementPaper {
  lot: Lot;
  closing: Closing;
  /** hash of the entry of the closing */
  hash: string;
  prices: readonly LotPrice[];
  organisation: Organisation;
  demo: boolean;
  locale: Locale;
  /** time zone of the place, of the IANA list */
  zone: string;
}

/**
 * A frozen settlement as a plain PDF for both sides to sign. The same closing gives the same bytes in a language. Throws
 * RangeError where nothing was settled.
 */
export async function settlementPdf(of: SettlementPaper): Promise<Buffer> {
  const { lot, closing, hash, prices, organisation, locale, zone } = of;
  const when = (at: string) => momentText(at, zone);
  if (!closing.settlement) throw new RangeError("nothing was settled");
  const t = tellerOf(locale);
  const view = sheetView({ settled: closing.settlement, lotFine: closing.fine_g }, prices, { locale, when });
  const version = closing.version ?? 1;
  const title = t("settlement.paper.title", { lot: lot.name });
  const sheet = new Paper({
    locale,
    title,
    subject: `${t("report.record.hash")} ${hash}`,
    issuedAt: closing.at,
    onlyEnglish: [],
    head: { left: organisation.name ?? title, right: t("settlement.paper.version", { version }) },
    ...(of.demo ? { demonstration: t("report.demonstration") } : {}),
    foot: (page, all) =>
      `${title}  ·  ${t("settlement.paper.version", { version })}  ·  ${t("report.foot.page", { page, of: all })}`,
  });
  const grams = (text: string) => `${inLocale(text, locale)} g`;
  sheet.heading(title, "H1");
  sheet.facts([
    ...lines(
      [t("report.organisation.name"), organisation.name],
      [t("report.organisation.address"), organisation.address],
      [t("report.organisation.contact"), organisation.contact],
      [t("report.organisation.verified-scale"), organisation.verifiedScale],
      [t("lots.opening.from"), lot.from],
      [t("settlement.paper.closed"), when(closing.at)],
      [t("settlement.paper.version-is"), `${version}`],
      [t("lots.closing.by"), closing.by],
      [t("lots.closing.facts.pieces"), `${closing.pieces}`],
      [t("lots.closing.facts.sum"), grams(closing.sum_g)],
      [t("lots.closing.facts.missing"), closing.missing_g && grams(closing.missing_g)],
    ),
    ...view.facts.map(([label, value]) => ({ label, value })),
  ]);
  sheet.heading(t("payout.caption"));
  sheet.table(
    [
      t("payout.what"),
      t("payout.net"),
      t("payout.fineness"),
      t("payout.rests-on"),
      t("payout.fine"),
      t("payout.pay-low"),
      t("payout.pay-high"),
    ],
    [
      ...view.rows.map((row) => [
        row.what,
        row.net,
        row.fineness,
        row.restsOn,
        row.fine,
        row.payLow,
        row.payHigh,
      ]),
      ...view.fees.map(({ what, amount }) => [what, "", "", "", "", amount, amount]),
      [t("payout.together"), "", "", "", "", view.totalLow, view.totalHigh],
    ],
    ["*", -62, 62, 92, 84, -66, -66],
  );
  sheet.paragraph(t("payout.paid", { amount: view.paid }), { size: 12, bold: true });
  if (view.paysBy !== "") sheet.paragraph(view.paysBy);
  for (const one of view.against) sheet.paragraph(one);
  sheet.paragraph(t("payout.rounding-rule"));
  if (view.leftOut.length > 0) {
    sheet.heading(t("payout.left-out.caption"));
    sheet.table(
      [t("payout.left-out.ticket"), t("payout.left-out.mass"), t("payout.left-out.why")],
      view.leftOut.map(({ ticket, mass, why }) => [ticket, mass, why]),
      [90, -80, "*"],
    );
  }
  if (closing.answers?.length) {
    sheet.heading(t("settlement.paper.asked"));
    sheet.list(closing.answers.map(({ asked, found }) => `${tell(asked, locale)} ${found}`));
  }
  if (closing.note !== undefined) sheet.paragraph(closing.note);
  sheet.heading(t("cautions.buying"));
  sheet.paragraph(t("cautions.buying-what"));
  sheet.heading(t("settlement.paper.signatures"));
  for (const side of ["buyer", "seller"] as const)
    sheet.paragraph(`${t(`settlement.paper.${side}`)}  ${"_".repeat(48)}`, { size: 11 });
  sheet.paragraph(`${t("report.record.hash")}: ${hash}`, { size: 7 });
  return sheet.finished();
}

function lines(...given: readonly (readonly [label: string, value: string | null | undefined])[]): Line[] {
  return given.flatMap(([label, value]) => (value ? [{ label, value }] : []));
}
