import { execFileSync } from "node:child_process";

/**
 * The text of a PDF as an independent reader gives it (pdftotext of poppler, in the order it was drawn), without its
 * blanks, since a line may break anywhere between words. The Debian package is installed where there is none.
 */
export function textOfPdf(pdf: Buffer): string {
  const read = () => execFileSync("pdftotext", ["-raw", "-", "-"], { input: pdf, stdio: "pipe" }).toString();
  try {
    return closedUp(read());
  } catch (cause) {
    if ((cause as { code?: string }).code !== "ENOENT") throw cause;
    const options = { stdio: "inherit" as const, env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
    execFileSync("apt-get", ["update", "-qq"], options);
    execFileSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "poppler-utils"], options);
    return closedUp(read());
  }
}

/** Text without blanks. */
export function closedUp(text: string): string {
  return text.replace(/\s+/g, "");
}
