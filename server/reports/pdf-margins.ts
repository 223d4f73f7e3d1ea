import { reportFonts } from "./fonts.ts";
import { type Doc, ink, margin, type PaperOf, pale } from "./pdf-doc.ts";

/** Who issued it, its number, and that it is a demonstration, at the head of every page. Marked as artifacts. */
export function heads(doc: Doc, { head, demonstration }: PaperOf): void {
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
export function footers(doc: Doc, of: PaperOf): void {
  const { count } = doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    doc.switchToPage(page);
    doc.page.margins.bottom = 0;
    doc.markContent("Artifact", { type: "Pagination" });
    doc
      .font(reportFonts.regular)
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
