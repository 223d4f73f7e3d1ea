import { encode } from "uqr";
import { tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";
import type { BudgetLine, Report } from "../../views/reports/report.ts";
import { type Paper, paper } from "./pdf-paper.ts";
import { drawPlot, plotHeight } from "./pdf-plot.ts";

/**
 * The report as a PDF: a page of result and a page of budget and readings. Tagged, fonts embedded, vector plot. The
 * same report gives the same bytes.
 */
export async function reportPdf(report: Report): Promise<Buffer> {
  const sheet = paper(report);
  result(sheet, report);
  sheet.newPage();
  behindIt(sheet, report);
  return sheet.finished();
}

function result(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  sheet.heading(report.title, "H1");
  sheet.paragraph(t("report.number-and-copy", { number: report.number, copy: report.copy }), {
    size: 10,
    bold: true,
  });
  if (report.voided !== null)
    sheet.paragraph(
      `${t("report.voided").toLocaleUpperCase(report.locale)}: ${t("report.voided-because", { reason: report.voided })}`,
      {
        size: 10,
        bold: true,
      },
    );
  if (report.replaces) {
    const { number, reason, by, at } = report.replaces;
    const what = number === null ? t("report.amended-record") : t("report.amends", { number });
    sheet.paragraph(`${what} ${t("report.reason", { reason, by, at })}`, { bold: true });
  }
  const customer = report.customer === null ? [] : [{ label: t("report.customer"), value: report.customer }];
  sheet.facts([...report.organisation, ...customer, ...report.dates]);
  sheet.heading(t("report.headings.item"));
  sheet.facts(report.item);
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
    ["*", -70, 45, 165],
  );
  sheet.paragraph(report.uncertaintyStatement);
  sheet.figure(plotHeight(report), plotInWords(report), (x, y) =>
    drawPlot(sheet.doc, report, x, y, sheet.width),
  );
  sheet.heading(t("report.headings.opinion"));
  const { state, because } = report.opinion;
  const told = report.onlyEnglish.includes(because) ? [state, because] : [`${state} ${because}`.trim()];
  for (const text of told) sheet.paragraph(text);
  if (report.opinion.notExcluded.length > 0)
    sheet.paragraph(
      t("report.opinion.not-excluded", {
        names: report.opinion.notExcluded.map(({ name }) => name).join(", "),
      }),
    );
  if (report.opinion.purposeMade !== null) sheet.paragraph(report.opinion.purposeMade);
  sheet.list(report.decision);
  if (report.otherTests.length > 0) {
    sheet.heading(t("report.headings.other-tests"));
    sheet.list(report.otherTests);
  }
  if (report.customerSupplied.length > 0) {
    sheet.heading(t("report.headings.supplied"));
    sheet.facts(report.customerSupplied);
  }
  sheet.heading(t("report.headings.cautions"));
  sheet.list([...report.cautions, ...report.statements]);
  if (report.authorisedBy !== null)
    sheet.paragraph(t("report.authorised", { by: report.authorisedBy }), { bold: true });
}

function behindIt(sheet: Paper, report: Report): void {
  const t = tellerOf(report.locale);
  sheet.heading(t("report.headings.method"));
  sheet.paragraph(report.method);
  sheet.paragraph(
    t("report.corrected-for", { what: report.corrections.join("; "), sampling: report.sampling }),
  );
  const deviations = [...report.deviations, ...report.warnings];
  sheet.paragraph(deviations.length === 0 ? t("report.deviations.none") : t("report.deviations.some"));
  sheet.list(deviations);
  sheet.heading(t("report.headings.conditions"));
  sheet.factsInPairs(report.conditions);
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
      voided === null ? shown : `${shown} ${t("report.readings.void").toLocaleUpperCase(report.locale)}`,
      at,
      source,
      voided === null ? because : `${t("report.readings.void")}: ${voided}`,
    ]),
    [105, -80, 120, 62, "*"],
  );
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
    ["*", -62, -56, 72, -66, -60, -40],
  );
  sheet.heading(t("report.headings.record"));
  record(sheet, report);
}

function budgetRow({ input, value, u, unit, sensitivity, contribution, share }: BudgetLine): string[] {
  return [input, value, u, unit, sensitivity, contribution, share];
}

const qrPoints = 74;

function record(sheet: Paper, { record, locale }: Report): void {
  const t = tellerOf(locale);
  const text = [
    `${t("report.record.record")} ${t("report.record.place", { subject: record.subject, row: record.row })}`,
    `${t("report.record.hash")}: ${record.hash}`,
    ...(record.keyId === null ? [] : [`${t("report.record.signed-by")}: ${record.keyId}`]),
    `${t("report.record.to-check")}: ${record.checkHow}`,
    `${t("report.record.versions")}: ${record.versions.map(({ label, value }) => `${label} ${value}`).join(", ")}`,
  ];
  const code = `underhook record ${record.hash}`;
  const { data, size } = encode(code, { ecc: "M", border: 4 });
  let top = 0;
  sheet.figure(qrPoints, t("report.record.qr", { text: code }), (x, y) => {
    const step = qrPoints / size;
    for (const [row, cells] of data.entries())
      for (const [column, dark] of cells.entries())
        if (dark) sheet.doc.rect(x + column * step, y + row * step, step, step);
    sheet.doc.fill("#000000");
    top = y;
  });
  // The words stand beside the code; what is longer than the code goes on below it, still indented.
  sheet.doc.y = top + 4;
  for (const line of text) sheet.paragraph(line, { size: 7, indent: qrPoints + 8 });
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
