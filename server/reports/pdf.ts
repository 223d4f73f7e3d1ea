import { encode } from "uqr";
import { type Paper, paper } from "./pdf-paper.ts";
import { drawPlot, plotHeight } from "./pdf-plot.ts";
import type { BudgetLine, Report } from "./report.ts";
import { shareShown } from "./results.ts";

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
  sheet.heading(report.title, "H1");
  sheet.paragraph(`Report ${report.number}, copy ${report.copy}`, { size: 10, bold: true });
  if (report.voided !== null)
    sheet.paragraph(`THE RESULT OF THIS RECORD WAS DECLARED VOID: ${report.voided}. It must not be used.`, {
      size: 10,
      bold: true,
    });
  if (report.replaces) {
    const { number, reason, by, at } = report.replaces;
    const what =
      number === null
        ? "This report states an amended record."
        : `Amendment to report ${number}, which it replaces.`;
    sheet.paragraph(`${what} Reason: ${reason} (${by}, ${at}).`, { bold: true });
  }
  const customer = report.customer === null ? [] : [{ label: "Customer", value: report.customer }];
  sheet.facts([...report.house, ...customer, ...report.dates]);
  sheet.heading("Item tested");
  sheet.facts(report.item);
  sheet.heading("Results");
  sheet.table(
    ["Quantity", "Value", "Unit", "Uncertainty"],
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
  sheet.heading(report.opinion.heading);
  sheet.paragraph(`The density ${report.opinion.state}. ${report.opinion.because}`);
  if (report.opinion.alive.length > 0)
    sheet.paragraph(
      `Alive, that is, not excluded: ${report.opinion.alive.map(({ name }) => name).join(", ")}.`,
    );
  sheet.list(report.decision);
  if (report.otherTests.length > 0) {
    sheet.heading("Other tests recorded with the piece, not part of the density result");
    sheet.list(report.otherTests);
  }
  if (report.customerSupplied.length > 0) {
    sheet.heading("Supplied by the customer, not measured here");
    sheet.facts(report.customerSupplied);
  }
  sheet.heading("Cautions and conditions of this report");
  sheet.list([...report.cautions, ...report.statements]);
  if (report.authorisedBy !== null) sheet.paragraph(`Authorised by ${report.authorisedBy}`, { bold: true });
}

function behindIt(sheet: Paper, report: Report): void {
  sheet.heading("Method");
  sheet.paragraph(report.method);
  sheet.paragraph(`Corrected for: ${report.corrections.join("; ")}. Sampling: ${report.sampling}`);
  const deviations = [...report.deviations, ...report.warnings];
  sheet.paragraph(
    deviations.length === 0
      ? "Deviations from the method: none."
      : "Deviations from the method and warnings:",
  );
  sheet.list(deviations);
  sheet.heading("Conditions and equipment");
  sheet.factsInPairs(report.conditions);
  sheet.heading("Readings, in the order taken");
  sheet.table(
    ["What", "Shown", "At (UTC)", "From", "Taken because"],
    report.readings.map(({ what, shown, at, source, because, voided }) => [
      what,
      voided === null ? shown : `${shown} VOID`,
      at,
      source,
      voided === null ? because : `void: ${voided}`,
    ]),
    [105, -80, 120, 62, "*"],
  );
  sheet.heading("Budget of the density");
  sheet.table(
    ["Input", "Value", "u", "Unit", "g/cm³ per unit", "Part, g/cm³", "Share"],
    report.budget.map(budgetRow),
    ["*", -62, -56, 72, -66, -60, -40],
  );
  sheet.heading("Record");
  record(sheet, report);
}

function budgetRow({ input, value, u, unit, sensitivity, contribution, share }: BudgetLine): string[] {
  return [input, value, u, unit, sensitivity, contribution, shareShown(share)];
}

const qrPoints = 74;

function record(sheet: Paper, { record }: Report): void {
  const text = [
    `Record ${record.subject}, row ${record.row}`,
    `Hash (SHA-256): ${record.hash}`,
    ...(record.keyId === null ? [] : [`Signed by key: ${record.keyId}`]),
    `To check: ${record.checkHow}`,
    `Versions: ${record.versions.map(({ label, value }) => `${label} ${value}`).join(", ")}`,
  ];
  const { data, size } = encode(`underhook record ${record.hash}`, { ecc: "M", border: 4 });
  let top = 0;
  sheet.figure(qrPoints, `QR code with the text: underhook record ${record.hash}`, (x, y) => {
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

function plotInWords({ plot, opinion }: Report): string {
  const bands = opinion.alive.flatMap(({ name, band }) => (band ? [`${name} ${band[0]} to ${band[1]}`] : []));
  return `Density axis at 20 °C in g/cm³. Measured ${plot.value.toPrecision(6)}, interval ${plot.low.toPrecision(6)} to ${plot.high.toPrecision(6)}. Bands alive: ${bands.join("; ") || "none"}.`;
}
