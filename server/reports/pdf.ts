import { encode } from "uqr";
import { inLocale } from "../../views/numbers.ts";
import { words } from "../../views/words/index.ts";
import { type Paper, paper } from "./pdf-paper.ts";
import { drawPlot, plotHeight } from "./pdf-plot.ts";
import type { BudgetLine, Report } from "./report.ts";

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
  const say = words(report.locale).report;
  sheet.heading(report.title, "H1");
  sheet.paragraph(say.numberAndCopy(report.number, report.copy), { size: 10, bold: true });
  if (report.voided !== null)
    sheet.paragraph(`${say.voided.toLocaleUpperCase(report.locale)}: ${say.voidedBecause(report.voided)}`, {
      size: 10,
      bold: true,
    });
  if (report.replaces) {
    const { number, reason, by, at } = report.replaces;
    const what = number === null ? say.amendedRecord : say.amends(number);
    sheet.paragraph(`${what} ${say.reason(reason, by, at)}`, { bold: true });
  }
  const customer = report.customer === null ? [] : [{ label: say.customer, value: report.customer }];
  sheet.facts([...report.house, ...customer, ...report.dates]);
  sheet.heading(say.headings.item);
  sheet.facts(report.item);
  sheet.heading(say.headings.results);
  const { quantity, value, unit, uncertainty } = say.results.head;
  sheet.table(
    [quantity, value, unit, uncertainty],
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
  sheet.heading(say.headings.opinion);
  const { state, because } = report.opinion;
  const told = report.onlyEnglish.includes(because) ? [state, because] : [`${state} ${because}`.trim()];
  for (const text of told) sheet.paragraph(text);
  if (report.opinion.alive.length > 0)
    sheet.paragraph(say.opinion.alive(report.opinion.alive.map(({ name }) => name).join(", ")));
  sheet.list(report.decision);
  if (report.otherTests.length > 0) {
    sheet.heading(say.headings.otherTests);
    sheet.list(report.otherTests);
  }
  if (report.customerSupplied.length > 0) {
    sheet.heading(say.headings.supplied);
    sheet.facts(report.customerSupplied);
  }
  sheet.heading(say.headings.cautions);
  sheet.list([...report.cautions, ...report.statements]);
  if (report.authorisedBy !== null) sheet.paragraph(say.authorised(report.authorisedBy), { bold: true });
}

function behindIt(sheet: Paper, report: Report): void {
  const say = words(report.locale).report;
  sheet.heading(say.headings.method);
  sheet.paragraph(report.method);
  sheet.paragraph(say.correctedFor(report.corrections.join("; "), report.sampling));
  const deviations = [...report.deviations, ...report.warnings];
  sheet.paragraph(deviations.length === 0 ? say.deviations.none : say.deviations.some);
  sheet.list(deviations);
  sheet.heading(say.headings.conditions);
  sheet.factsInPairs(report.conditions);
  sheet.heading(say.headings.readingsInOrder);
  const { head, void: voidWord } = say.readings;
  sheet.table(
    [head.what, head.shown, head.at, head.from, head.because],
    report.readings.map(({ what, shown, at, source, because, voided }) => [
      what,
      voided === null ? shown : `${shown} ${voidWord.toLocaleUpperCase(report.locale)}`,
      at,
      source,
      voided === null ? because : `${voidWord}: ${voided}`,
    ]),
    [105, -80, 120, 62, "*"],
  );
  sheet.heading(say.headings.budget);
  const { input, value, u, unit, perUnit, part, share } = say.budget.head;
  sheet.table([input, value, u, unit, perUnit, part, share], report.budget.map(budgetRow), [
    "*",
    -62,
    -56,
    72,
    -66,
    -60,
    -40,
  ]);
  sheet.heading(say.headings.record);
  record(sheet, report);
}

function budgetRow({ input, value, u, unit, sensitivity, contribution, share }: BudgetLine): string[] {
  return [input, value, u, unit, sensitivity, contribution, share];
}

const qrPoints = 74;

function record(sheet: Paper, { record, locale }: Report): void {
  const say = words(locale).report.record;
  const text = [
    `${say.record} ${say.place(record.subject, record.row)}`,
    `${say.hash}: ${record.hash}`,
    ...(record.keyId === null ? [] : [`${say.signedBy}: ${record.keyId}`]),
    `${say.toCheck}: ${record.checkHow}`,
    `${say.versions}: ${record.versions.map(({ label, value }) => `${label} ${value}`).join(", ")}`,
  ];
  const code = `underhook record ${record.hash}`;
  const { data, size } = encode(code, { ecc: "M", border: 4 });
  let top = 0;
  sheet.figure(qrPoints, say.qr(code), (x, y) => {
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
  const say = words(locale).report.plot;
  const number = (value: number | string) => inLocale(`${value}`, locale);
  const bands = opinion.alive.flatMap(({ name, band }) =>
    band ? [say.band(name, number(band[0]), number(band[1]))] : [],
  );
  const [value, low, high] = [plot.value, plot.low, plot.high].map((x) => number(x.toPrecision(6)));
  return say.inWords(value!, low!, high!, bands.join("; "));
}
