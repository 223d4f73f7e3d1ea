import { execFileSync } from "node:child_process";
import { peers } from "../../setup/debian.ts";

/**
 * The text of a PDF as an independent reader gives it (pdftotext of poppler, in the order it was drawn), without its
 * blanks, since a line may break anywhere between words.
 */
export function textOfPdf(pdf: Buffer): string {
  return closedUp(wordsOfPdf(pdf));
}

/** The same with its blanks. */
export function wordsOfPdf(pdf: Buffer): string {
  return execFileSync(peers.poppler.path, ["-raw", "-", "-"], { input: pdf, stdio: "pipe" }).toString();
}

/** Text without blanks. */
export function closedUp(text: string): string {
  return text.replace(/\s+/g, "");
}
