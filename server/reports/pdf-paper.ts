import PDFDocument from "pdfkit";
import type { Locale } from "../../views/messages/language.ts";
import type { Line } from "../../views/reports/report.ts";
import { reportFonts } from "./fonts.ts";

export type Doc = PDFKit.PDFDocument;
type Section = ReturnType<Doc["struct"]>;

/** A4, points. */
const margin = 45;
export const ink = "#1a1a1a";
export const pale = "#8a8a8a";

/** A sheet to write a report on: tagged paragraphs, headings and tables, from top to bottom. */
export interface Paper {
  doc: Doc;
  width: number;
  heading(text: string, level?: "H1" | "H2"): void;
  paragraph(text: string, options?: { size?: number; bold?: boolean; color?: string; indent?: number }): void;
  list(items: string[], size?: number): void;
  facts(lines: Line[]): void;
  /** text of several sizes in one line */
  line(parts: { text: string; size: number; bold?: boolean }[]): void;
  /** many short facts, two in a row */
  factsInPairs(lines: Line[]): void;
  /** a negative width stands for a column of figures, which end at its right */
  table(head: string[], rows: string[][], widths: (number | "*")[]): void;
  /** a drawing with its description for those who cannot see it */
  figure(height: number, alt: string, draw: (x: number, y: number) => void): void;
  newPage(): void;
  finished(): Promise<Buffer>;
}

/** Where the head of a page ends, points. */
const headBottom = 52;

/** A sentence as a line of a list. */
const listed = (sentence: string) => `–  ${sentence}`;

/** What a paper is of. */
export interface PaperOf {
  locale: Locale;
  title: string;
  subject: string;
  /** ISO 8601 */
  issuedAt: string;
  /** sentences of earlier versions that stand in English */
  onlyEnglish: readonly string[];
  /** who issued it, and what it is, at the head of every page */
  head: { left: string; right: string };
  /** that everything on it is invented, for a demonstration */
  demonstration?: string;
  /** what stands at the foot of a page */
  foot(page: number, of: number): string;
}

/** Opens the sheet. The date inside is the date of issue, so that the same paper gives the same bytes. */
export function paper(of: PaperOf): Paper {
  const doc = new PDFDocument({
    size: "A4",
    margins: {
      top: of.demonstration !== undefined ? headBottom + 18 : headBottom,
      left: margin,
      right: margin,
      bottom: margin + 10,
    },
    pdfVersion: "1.7",
    tagged: true,
    lang: of.locale,
    displayTitle: true,
    bufferPages: true,
    info: {
      Title: of.title,
      Subject: of.subject,
      Creator: "Underhook",
      Producer: "Underhook",
      CreationDate: new Date(of.issuedAt),
    },
  });
  const chunks: Buffer[] = [];
  doc.on("data", (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise<Buffer>((resolve) => doc.on("end", () => resolve(Buffer.concat(chunks))));
  const { regular, bold } = reportFonts;
  // By path, not by registered name: tables set the font back by its path, and a name would be parsed anew each time.
  doc.font(regular).fontSize(9).fillColor(ink);
  const width = doc.page.width - 2 * margin;
  const whole: Section = doc.struct("Document");
  doc.addStructure(whole);
  const add = (type: string, draw: () => void, options: { alt?: string; lang?: string } = {}) => {
    whole.add(doc.struct(type as "P", options, [draw]));
  };
  const room = (height: number) => {
    if (doc.y + height > doc.page.height - doc.page.margins.bottom) doc.addPage();
  };

  return {
    doc,
    width,
    heading(text, level = "H2") {
      room(60);
      if (level === "H2") doc.y += 5;
      add(level, () => {
        doc
          .font(bold)
          .fontSize(level === "H1" ? 16 : 10.5)
          .fillColor(ink)
          .text(text, margin, doc.y, { width });
        doc.font(regular).fontSize(9);
      });
      doc.y += 2;
    },
    paragraph(text, { size = 8.5, bold: strong = false, color = ink, indent = 0 } = {}) {
      doc.font(strong ? bold : regular).fontSize(size);
      room(doc.heightOfString(text, { width: width - indent }));
      add(
        "P",
        () => doc.fillColor(color).text(text, margin + indent, doc.y, { width: width - indent }),
        of.onlyEnglish.some((sentence) => text === sentence || text === listed(sentence))
          ? { lang: "en" }
          : {},
      );
      doc.y += 2;
    },
    line(parts) {
      room(Math.max(...parts.map(({ size }) => size)) * 1.3);
      add("P", () => {
        const top = doc.y;
        const tallest = Math.max(...parts.map(({ size }) => size));
        let x = margin;
        for (const { text, size, bold: strong = false } of parts) {
          doc
            .font(strong ? bold : regular)
            .fontSize(size)
            .fillColor(ink);
          doc.text(text, x, top + (tallest - size) * 0.93, { lineBreak: false });
          x += doc.widthOfString(text) + 5;
        }
        doc.x = margin;
        doc.y = top + tallest * 1.25;
        doc.font(regular).fontSize(9);
      });
    },
    list(items, size = 8.5) {
      for (const item of items) this.paragraph(listed(item), { size });
    },
    facts(lines) {
      this.table(
        [],
        lines.map(({ label, value }) => [label, value]),
        [130, "*"],
      );
    },
    factsInPairs(lines) {
      const half = Math.ceil(lines.length / 2);
      const cells = (line: Line | undefined) => [line?.label ?? "", line?.value ?? ""];
      const rows = lines.slice(0, half).map((line, row) => [...cells(line), ...cells(lines[half + row])]);
      this.table([], rows, [118, 150, 118, "*"]);
    },
    table(head, rows, widths) {
      if (rows.length === 0) return;
      room(34);
      doc.font(regular).fontSize(7.5).fillColor(ink);
      const top = doc.y;
      doc.x = margin;
      doc.table({
        structParent: whole,
        position: { x: margin, y: top },
        maxWidth: width,
        columnStyles: widths.map((each) =>
          each === "*" || each > 0 ? { width: each } : { width: -each, align: { x: "right" as const } },
        ),
        defaultStyle: { padding: [1.1, 4, 1.1, 2], border: [0, 0, 0.4, 0], borderColor: "#c9c9c9" },
        data: [
          ...(head.length > 0
            ? [
                head.map((text) => ({
                  text,
                  type: "TH" as const,
                  scope: "column" as const,
                  font: { src: bold },
                })),
              ]
            : []),
          ...rows,
        ],
      } as unknown as PDFKit.Mixins.TableOptionsWithData);
      doc.x = margin;
      doc.y += 4;
    },
    figure(height, alt, draw) {
      room(height + 4);
      const y = doc.y;
      add("Figure", () => draw(margin, y), { alt });
      doc.x = margin;
      doc.y = y + height + 4;
    },
    newPage: () => {
      doc.addPage();
    },
    finished() {
      heads(doc, of);
      footers(doc, of, regular);
      whole.end();
      doc.end();
      return ended;
    },
  };
}

/** Who issued it, its number, and that it is a demonstration, at the head of every page. Marked as artifacts. */
function heads(doc: Doc, { head, demonstration }: PaperOf): void {
  const { regular, bold } = reportFonts;
  const width = doc.page.width - 2 * margin;
  for (let page = 0; page < doc.bufferedPageRange().count; page += 1) {
    doc.switchToPage(page);
    doc.markContent("Artifact", { type: "Pagination" });
    doc.font(bold).fontSize(9.5).fillColor(ink);
    doc.text(head.left, margin, 26, {
      width: width - 190,
      height: 12,
      ellipsis: true,
      lineBreak: false,
    });
    doc.font(regular).fontSize(8);
    doc.text(head.right, margin + width - 185, 27, {
      width: 185,
      align: "right",
      lineBreak: false,
    });
    doc
      .moveTo(margin, 42)
      .lineTo(margin + width, 42)
      .lineWidth(1)
      .stroke(ink);
    if (demonstration !== undefined) {
      doc.rect(margin, 47, width, 14).fill("#ece6d6");
      doc.font(bold).fontSize(8).fillColor(ink);
      doc.text(demonstration, margin + 5, 50, { width: width - 10, lineBreak: false });
    }
    doc.endMarkedContent();
  }
}

/** Number, copy and page on every page, and a clear end (7.8.2.1 d). Marked as artifacts: they are not read aloud. */
function footers(doc: Doc, of: PaperOf, regular: string): void {
  const { count } = doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    doc.switchToPage(page);
    doc.page.margins.bottom = 0;
    doc.markContent("Artifact", { type: "Pagination" });
    doc
      .font(regular)
      .fontSize(7.5)
      .fillColor(pale)
      .text(of.foot(page + 1, count), margin, doc.page.height - margin, {
        width: doc.page.width - 2 * margin,
        align: "center",
        lineBreak: false,
      });
    doc.endMarkedContent();
  }
}
