import type { Line } from "../../views/reports/report.ts";
import { reportFonts } from "./fonts.ts";
import { type Doc, documentOf, ink, margin, type PaperOf } from "./pdf-doc.ts";
import { footers, heads } from "./pdf-margins.ts";

type Section = ReturnType<Doc["struct"]>;

const { regular, bold } = reportFonts;

/** A sentence as a line of a list. */
const listed = (sentence: string) => `–  ${sentence}`;

/** How a paragraph looks; sizes in points. */
interface Appearance {
  size?: number;
  bold?: boolean;
  indent?: number;
}

/** A sheet to write a report on: tagged paragraphs, headings and tables, from top to bottom. */
export class Paper {
  readonly doc: Doc;
  readonly width: number;
  readonly #of: PaperOf;
  readonly #whole: Section;
  readonly #ended: Promise<Buffer>;

  constructor(of: PaperOf) {
    this.#of = of;
    this.doc = documentOf(of);
    this.width = this.doc.page.width - 2 * margin;
    const chunks: Buffer[] = [];
    this.doc.on("data", (chunk: Buffer) => chunks.push(chunk));
    this.#ended = new Promise((resolve) => this.doc.on("end", () => resolve(Buffer.concat(chunks))));
    this.#plain();
    this.#whole = this.doc.struct("Document");
    this.doc.addStructure(this.#whole);
  }

  /** A heading, and with it on one page at least so many points of what follows. */
  heading(text: string, level: "H1" | "H2" = "H2", follows = 40): void {
    const { doc, width } = this;
    this.#room(20 + follows);
    if (level === "H2") doc.y += 4;
    this.#add(level, () => {
      doc
        .font(bold)
        .fontSize(level === "H1" ? 16 : 10.5)
        .fillColor(ink)
        .text(text, margin, doc.y, { width });
      this.#plain();
    });
    doc.y += 2;
  }

  paragraph(text: string, { size = 8.5, bold: strong = false, indent = 0 }: Appearance = {}): void {
    const { doc } = this;
    const width = this.width - indent;
    const isEnglish = this.#of.onlyEnglish.some((one) => text === one || text === listed(one));
    this.#room(this.heightOf(text, { size, bold: strong, indent }) - 2);
    this.#add(
      "P",
      () => doc.fillColor(ink).text(text, margin + indent, doc.y, { width }),
      isEnglish ? { lang: "en" } : {},
    );
    doc.y += 2;
  }

  /** What a paragraph takes, with the gap below it, points. Sets its font. */
  heightOf(text: string, { size = 8.5, bold: strong = false, indent = 0 }: Appearance): number {
    this.doc.font(strong ? bold : regular).fontSize(size);
    return this.doc.heightOfString(text, { width: this.width - indent }) + 2;
  }

  list(items: readonly string[], size = 8.5): void {
    for (const item of items) this.paragraph(listed(item), { size });
  }

  /** Text of several sizes in one line. */
  line(parts: readonly { text: string; size: number; bold?: boolean }[]): void {
    const { doc } = this;
    const tallest = Math.max(...parts.map(({ size }) => size));
    this.#room(tallest * 1.3);
    this.#add("P", () => {
      const top = doc.y;
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
      this.#plain();
    });
  }

  facts(lines: readonly Line[]): void {
    this.table(
      [],
      lines.map(({ label, value }) => [label, value]),
      [130, "*"],
    );
  }

  /** Many short facts, two in a row. */
  factsInPairs(lines: readonly Line[]): void {
    const half = Math.ceil(lines.length / 2);
    const cells = (line: Line | undefined) => [line?.label ?? "", line?.value ?? ""];
    const rows = lines.slice(0, half).map((line, row) => [...cells(line), ...cells(lines[half + row])]);
    this.table([], rows, [118, 150, 118, "*"]);
  }

  /** A negative width stands for a column of figures, which end at its right. */
  table(head: readonly string[], rows: readonly string[][], widths: readonly (number | "*")[]): void {
    if (rows.length === 0) return;
    const { doc, width } = this;
    this.#room(34);
    doc.font(regular).fontSize(7.5).fillColor(ink);
    const heads = head.map((text) => ({ text, type: "TH", scope: "column", font: { src: bold } }));
    doc.table({
      structParent: this.#whole,
      position: { x: margin, y: doc.y },
      maxWidth: width,
      columnStyles: widths.map((each) =>
        each === "*" || each > 0 ? { width: each } : { width: -each, align: { x: "right" as const } },
      ),
      defaultStyle: { padding: [1.1, 4, 1.1, 2], border: [0, 0, 0.4, 0], borderColor: "#c9c9c9" },
      data: [...(heads.length > 0 ? [heads] : []), ...rows],
    } as unknown as PDFKit.Mixins.TableOptionsWithData);
    doc.x = margin;
    doc.y += 4;
  }

  /** A drawing with its description for those who cannot see it. */
  figure(height: number, alt: string, draw: (x: number, y: number) => void): void {
    const { doc } = this;
    this.#room(height + 4);
    const y = doc.y;
    this.#add("Figure", () => draw(margin, y), { alt });
    doc.x = margin;
    doc.y = y + height + 4;
  }

  newPage(): void {
    this.doc.addPage();
  }

  /** Heads and feet the pages, and gives the whole. */
  finished(): Promise<Buffer> {
    heads(this.doc, this.#of);
    footers(this.doc, this.#of);
    this.#whole.end();
    this.doc.end();
    return this.#ended;
  }

  /** By path, not by registered name: tables set the font back by its path, and a name would be parsed anew each time. */
  #plain(): void {
    this.doc.font(regular).fontSize(9).fillColor(ink);
  }

  #room(height: number): void {
    const { doc } = this;
    if (doc.y + height > doc.page.height - doc.page.margins.bottom) doc.addPage();
  }

  #add(
    type: "H1" | "H2" | "P" | "Figure",
    draw: () => void,
    options: { alt?: string; lang?: string } = {},
  ): void {
    this.#whole.add(this.doc.struct(type, options, [draw]));
  }
}
