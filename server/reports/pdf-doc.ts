import PDFDocument from "pdfkit";
import type { Locale } from "../../views/messages/language.ts";

export type Doc = PDFKit.PDFDocument;

/** A4, points. */
export const margin = 45;
export const ink = "#1a1a1a";
export const pale = "#8a8a8a";

/** Where the head of a page ends, points. */
const headBottom = 52;

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

/** An empty document. The date inside is the date of issue, so that the same paper gives the same bytes. */
export function documentOf(of: PaperOf): Doc {
  return new PDFDocument({
    size: "A4",
    margins: {
      top: of.demonstration !== undefined ? headBottom + 18 : headBottom,
      left: margin,
      right: margin,
      bottom: margin + 4,
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
}
