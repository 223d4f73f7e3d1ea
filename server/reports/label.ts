import PDFDocument from "pdfkit";
import { encode } from "uqr";
import { reportFonts } from "./fonts.ts";

/** A label of the common width of 62 mm, 29 mm high, in points. */
const size = { width: (62 / 25.4) * 72, height: (29 / 25.4) * 72 };
const margin = 6;

export interface Label {
  /** largest, first: the ticket */
  heading: string;
  lines: readonly string[];
  /** what the square code holds: the id of the record */
  code: string;
}

/** A small label for the bag of a piece, as PDF: ticket, what was found, and a square code that a reader finds it by. */
export function labelPdf({ heading, lines, code }: Label): Promise<Buffer> {
  const doc = new PDFDocument({ size: [size.width, size.height], margin: 0 });
  const chunks: Buffer[] = [];
  doc.on("data", (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise<Buffer>((resolve) => doc.on("end", () => resolve(Buffer.concat(chunks))));
  const { regular, bold } = reportFonts;
  const square = encode(code);
  const side = 52;
  const left = size.width - margin - side;
  const module = side / square.size;
  square.data.forEach((row, y) => {
    row.forEach((dark, x) => {
      if (dark) doc.rect(left + x * module, margin + y * module, module, module).fill("#000");
    });
  });
  const width = left - 2 * margin;
  doc
    .fillColor("#000")
    .font(bold)
    .fontSize(11)
    .text(heading, margin, margin, { width, height: 14, ellipsis: true });
  doc.font(regular).fontSize(7);
  lines.forEach((line, place) => {
    doc.text(line, margin, margin + 16 + place * 10, {
      width: place < 4 ? width : size.width - 2 * margin,
      height: 9,
      ellipsis: true,
    });
  });
  doc.end();
  return ended;
}
