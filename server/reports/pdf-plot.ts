import { scaleLinear } from "d3-scale";
import { tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";
import type { Report } from "../../views/reports/report.ts";
import { type Doc, ink, pale } from "./pdf-doc.ts";

/** At most so many bands are drawn; the list of names beside the plot is complete. */
const mostBands = 5;
const rowHeight = 11;

/** The bands that are drawn: the claim first, then the others in the order of the statement. */
function bandsDrawn({ opinion, plot }: Report) {
  const known = opinion.notExcluded.filter((metal) => metal.band !== null);
  const claim = known.filter((metal) => metal.id === plot.claim);
  return [...claim, ...known.filter((metal) => metal.id !== plot.claim)].slice(0, mostBands);
}

/** Height the plot needs, points. */
export function plotHeight(report: Report): number {
  return 44 + bandsDrawn(report).length * rowHeight;
}

/** One density axis at 20 °C: the measured value with its coverage interval, the bands of what is not excluded under it. */
export function drawPlot(doc: Doc, report: Report, x: number, y: number, width: number): void {
  const { plot } = report;
  const t = tellerOf(report.locale);
  const bands = bandsDrawn(report);
  const [from, to] = shownRange(
    report,
    bands.flatMap(({ band }) => (band ? [band] : [])),
  );
  const labels = 150;
  const axis = scaleLinear()
    .domain([from, to])
    .range([x + labels, x + width])
    .clamp(true);
  doc.fontSize(7).lineWidth(0.5);
  const bottom = y + 26 + bands.length * rowHeight;

  doc
    .rect(axis(plot.low), y + 4, axis(plot.high) - axis(plot.low), bottom - y - 4)
    .fillOpacity(0.1)
    .fill(ink)
    .fillOpacity(1);
  doc
    .moveTo(axis(plot.low), y + 12)
    .lineTo(axis(plot.high), y + 12)
    .lineWidth(1.6)
    .stroke(ink);
  doc.circle(axis(plot.value), y + 12, 2.2).fill(ink);
  doc.fillColor(ink).text(t("report.plot.measured"), x, y + 8, { width: labels - 6, lineBreak: false });

  for (const [row, metal] of bands.entries()) {
    if (!metal.band) continue;
    const [low, high] = metal.band;
    const top = y + 22 + row * rowHeight;
    const claimed = metal.id === plot.claim;
    doc.rect(axis(low), top + 1, Math.max(axis(high) - axis(low), 1.2), 6);
    if (claimed) doc.fill(ink);
    else doc.lineWidth(0.7).stroke(ink);
    const label = claimed ? t("report.plot.claim", { name: metal.name }) : metal.name;
    doc
      .fillColor(ink)
      .text(label, x, top, { width: labels - 6, height: 9, ellipsis: true, lineBreak: false });
  }

  doc
    .moveTo(x + labels, bottom)
    .lineTo(x + width, bottom)
    .lineWidth(0.5)
    .stroke(pale);
  for (const tick of axis.ticks(7)) {
    doc
      .moveTo(axis(tick), bottom)
      .lineTo(axis(tick), bottom + 3)
      .stroke(pale);
    doc.fillColor(ink).text(inLocale(axis.tickFormat(7)(tick), report.locale), axis(tick) - 20, bottom + 4, {
      width: 40,
      align: "center",
      lineBreak: false,
    });
  }
  doc.text(t("report.plot.axis"), x, bottom + 4, { width: labels - 6, lineBreak: false });
}

/** A band wider than this share of the value (powders in resin, mixtures) runs off the axis instead of squeezing it. */
const wideShare = 0.12;

function shownRange({ plot }: Report, bands: (readonly [number, number])[]): [from: number, to: number] {
  const narrow = bands.filter(([low, high]) => high - low <= wideShare * plot.value);
  const ends = [plot.low, plot.high, ...narrow.flat()];
  const pad = Math.max((Math.max(...ends) - Math.min(...ends)) * 0.1, 0.002 * plot.value);
  return [Math.min(...ends) - pad, Math.max(...ends) + pad];
}
