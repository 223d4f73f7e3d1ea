import { encode } from "uqr";
import { tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";
import type { BudgetLine, Report } from "../../views/reports/report.ts";
import { ink } from "./pdf-doc.ts";
import { Paper } from "./pdf-paper.ts";
import { drawPlot, plotHeight } from "./pdf-plot.ts";

/**
 * The report as a PDF: a page of result and a page of budget and readings. Tagged, fonts embedded, vector plot. The
 * same report gives the same bytes.
 */
export async function reportPdf(report: Report): Promise<Buffer> {
  const t = tellerOf(report.locale);
  const { locale, issuedAt, onlyEnglish, demonstration } = report;
  const sheet = new Paper({
    ...{ locale, issuedAt, onlyEnglish },
    ...(demonstration ? { demonstration: t("report.demonstration") } : {}),
    title: `${report.title} ${report.number}`,
    subject: `${t("report.record.record")} ${report.record.hash}`,
    head: {
      left:
        report.organisation.find(({ label }) => label === t("report.organisation.name"))?.value ??
        report.title,
      right: t("report.number-and-copy", { number: report.number, copy: report.copy }),
    },
    foot: (page, of) =>
      [
        t("report.foot.number", { number: report.number }),
        t("report.foot.copy", { copy: report.copy }),
        ...(report.replaces?.number ? [t("report.foot.replaces", { number: report.replaces.number })] : []),
        t("report.foot.page", { page, of }),
        ...(page === of ? [t("report.foot.end")] : []),
      ].join("  ·  "),
  });
  result(sheet, report);
  sheet.newPage();
  behindIt(sheet, report);
  return sheet.finished();
}

function result(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  sheet.heading(report.title, "H1");
  standing(sheet, report);
  const { answer, density, of } = report.headline;
  sheet.paragraph(answer, { size: 13, bold: true });
  sheet.line([
    { text: density, size: 22 },
    { text: of, size: 9.5 },
  ]);
  sheet.figure(plotHeight(report), plotInWords(report), (x, y) =>
    drawPlot(sheet.doc, report, x, y, sheet.width),
  );
  sheet.factsInPairs([
    ...report.item,
    { label: t("report.customer"), value: report.customer },
    ...report.dates,
  ]);
  sheet.heading(t("report.headings.results"));
  sheet.table(
    [
      t("report.results.head.quantity"),
      t("report.results.head.value"),
      t("report.results.head.unit"),
      t("report.results.head.uncertainty"),
    ],
    report.results.map(({ quantity, value, unit, uncertainty }) => [
      quantity,
      value,
      unit,
      uncertainty ?? "–",
    ]),
    ["*", -130, 45, 80],
  );
  left(sheet, report);
  signatures(sheet, report);
}

function standing(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  if (report.voided !== null)
    sheet.paragraph(
      `${t("report.voided").toLocaleUpperCase(report.locale)}: ${t("report.voided-because", { reason: report.voided })}`,
      { size: 10, bold: true },
    );
  if (report.replaces) {
    const { number, reason, by, at } = report.replaces;
    const what = number === null ? t("report.amended-record") : t("report.amends", { number });
    sheet.paragraph(`${what} ${t("report.reason", { reason, by, at })}`, { bold: true });
  }
}

/** So many of what is not excluded stand on the first page; all of them stand in the record. */
const mostLeft = 6;

/** What the density does not exclude, apart from the results and marked (7.8.7). */
function left(
  sheet: Paper,
  { locale, opinion, laboratory, cautions, decision, customerSupplied }: Report,
): void {
  const t = tellerOf(locale);
  sheet.heading(t("report.headings.opinion"));
  sheet.paragraph(opinion.state);
  const others = opinion.notExcluded.filter(({ occurrence }) => occurrence !== "");
  sheet.table(
    [t("report.left.head.name"), t("report.left.head.met")],
    others.slice(0, mostLeft).map(({ name, occurrence }) => [name, occurrence]),
    ["*", 200],
  );
  if (others.length > mostLeft) sheet.paragraph(t("report.left.more", { count: others.length - mostLeft }));
  if (opinion.purposeMade !== null) sheet.paragraph(opinion.purposeMade);
  if (opinion.fineness.length > 0) sheet.paragraph(opinion.fineness.join(" "));
  if (opinion.hazards.length > 0)
    sheet.paragraph([`${t("hazard.title")}:`, ...opinion.hazards].join(" "), { size: 7.5 });
  if (laboratory.length > 0) {
    sheet.heading(t("report.headings.laboratory"));
    sheet.list(laboratory);
  }
  sheet.list(decision, 7.5);
  sheet.paragraph(cautions[0] ?? "", { size: 7.5 });
  if (customerSupplied.length > 0) {
    sheet.heading(t("report.headings.supplied"));
    sheet.factsInPairs(customerSupplied);
  }
}

const signatureHeight = 44;

/** Three lines to sign on, side by side. */
function signatures(sheet: Paper, report: Report): void {
  const gap = 18;
  const each = (sheet.width - 2 * gap) / 3;
  const { page } = sheet.doc;
  sheet.doc.y = Math.max(sheet.doc.y, page.height - page.margins.bottom - signatureHeight - 6);
  sheet.figure(signatureHeight, report.signatures.join("; "), (x, y) => {
    for (const [place, label] of report.signatures.entries()) {
      const from = x + place * (each + gap);
      sheet.doc
        .moveTo(from, y + 28)
        .lineTo(from + each, y + 28)
        .lineWidth(0.7)
        .stroke(ink);
      sheet.doc
        .fontSize(7.5)
        .fillColor(ink)
        .text(label, from, y + 31, { width: each, lineBreak: false });
    }
  });
}

/** Side of the code that holds the hash of the record. */
const qrPoints = 66;

/** What stands behind the result is read by few. */
const small = { size: 7.5 };

function behindIt(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  sheet.factsInPairs(report.organisation.filter(({ label }) => label !== t("report.organisation.name")));
  sheet.paragraph(report.uncertaintyStatement, small);
  headedList(sheet, t("report.headings.other-tests"), report.otherTests);
  sheet.heading(t("report.headings.method"));
  sheet.paragraph(report.method, small);
  sheet.paragraph(
    t("report.corrected-for", { what: report.corrections.join("; "), sampling: report.sampling }),
    small,
  );
  const deviations = [...report.deviations, ...report.warnings];
  sheet.paragraph(deviations.length === 0 ? t("report.deviations.none") : t("report.deviations.some"), small);
  sheet.list(deviations, small.size);
  headedList(sheet, t("report.headings.attempts"), report.attempts);
  headedList(sheet, t("report.headings.amendments"), report.amendments);
  sheet.heading(t("report.headings.conditions"));
  sheet.factsInPairs(report.conditions);
  readings(sheet, report);
  budget(sheet, report);
  sheet.heading(t("report.headings.cautions"));
  sheet.paragraph([...report.cautions.slice(1), ...report.statements].join(" "), small);
  if (report.authorisedBy !== null)
    sheet.paragraph(t("report.authorised", { by: report.authorisedBy }), { bold: true });
  record(sheet, report);
}

/** Sentences under their heading; nothing where there are none. */
function headedList(sheet: Paper, heading: string, items: readonly string[]): void {
  if (items.length === 0) return;
  sheet.heading(heading);
  sheet.list(items, small.size);
}

function readings(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  const isVoid = t("report.readings.void");
  sheet.heading(t("report.headings.readings-in-order"));
  sheet.table(
    [
      t("report.readings.head.what"),
      t("report.readings.head.shown"),
      t("report.readings.head.at"),
      t("report.readings.head.from"),
      t("report.readings.head.because"),
    ],
    report.readings.map(({ what, shown, at, source, because, voided }) => [
      what,
      voided === null ? shown : `${shown} ${isVoid.toLocaleUpperCase(report.locale)}`,
      at,
      source,
      voided === null ? because : `${isVoid}: ${voided}`,
    ]),
    [112, -98, 96, 66, "*"],
  );
}

function budget(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  sheet.heading(t("report.headings.budget"));
  sheet.table(
    [
      t("report.budget.head.input"),
      t("report.budget.head.value"),
      t("report.budget.head.u"),
      t("report.budget.head.unit"),
      t("report.budget.head.per-unit"),
      t("report.budget.head.part"),
      t("report.budget.head.share"),
    ],
    report.budget.map(budgetRow),
    ["*", -56, -50, 44, -78, -76, -40],
  );
}

function budgetRow({ input, value, u, unit, sensitivity, contribution, share }: BudgetLine): string[] {
  return [input, value, u, unit, sensitivity, contribution, share];
}

function record(sheet: Paper, { record, locale }: Report): void {
  const t = tellerOf(locale);
  const versions = record.versions.map(({ label, value }) => `${label} ${value}`).join(", ");
  const text = [
    `${t("report.record.record")} ${t("report.record.place", { subject: record.subject, row: record.row })}; ${versions}`,
    `${t("report.record.hash")}: ${record.hash}`,
    ...(record.keyId === null ? [] : [`${t("report.record.signed-by")}: ${record.keyId}`]),
    `${t("report.record.to-check")}: ${record.checkHow}`,
  ];
  const beside = { size: 7, indent: qrPoints + 8 };
  const height = text.reduce((sum, line) => sum + sheet.heightOf(line, beside), 4);
  sheet.heading(t("report.headings.record"), "H2", Math.max(qrPoints, height));
  const code = `underhook record ${record.hash}`;
  let top = 0;
  sheet.figure(qrPoints, t("report.record.qr", { text: code }), (x, y) => {
    drawCode(sheet, code, x, y);
    top = y;
  });
  // The words stand beside the code; what is longer than the code goes on below it, still indented.
  sheet.doc.y = top + 4;
  for (const line of text) sheet.paragraph(line, beside);
}

function drawCode({ doc }: Paper, text: string, x: number, y: number): void {
  const { data, size } = encode(text, { ecc: "M", border: 4 });
  const step = qrPoints / size;
  for (const [row, cells] of data.entries())
    for (const [column, dark] of cells.entries())
      if (dark) doc.rect(x + column * step, y + row * step, step, step);
  doc.fill("#000000");
}

function plotInWords({ plot, opinion, locale }: Report): string {
  const t = tellerOf(locale);
  const number = (value: number | string) => inLocale(`${value}`, locale);
  const bands = opinion.notExcluded.flatMap(({ name, band }) =>
    band ? [t("report.plot.band", { name, low: number(band[0]), high: number(band[1]) })] : [],
  );
  const [value, low, high] = [plot.value, plot.low, plot.high].map((x) => number(x.toPrecision(6)));
  return t("report.plot.in-words", {
    value: value!,
    low: low!,
    high: high!,
    bands: bands.join("; ") || t("report.plot.no-bands"),
  });
}
