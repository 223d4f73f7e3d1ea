import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Message, message } from "../../calibration/message.ts";
import { reasonOf } from "../../calibration/reason.ts";
import type { EntryOf } from "../ledger/entry.ts";
import { LedgerError } from "../ledger/error.ts";
import { readBeside, sha256, writeBeside } from "../ledger/file-beside.ts";
import { type FilesBeside, faultOf } from "../ledger/named-files.ts";

/** A report as it was printed: the PDF and the main part of its page, byte by byte. */
export interface Printed {
  pdf: Buffer;
  page: string;
}

/** SHA-256 of both files of a printed report, as the ledger names them. */
export type Print = NonNullable<EntryOf<"report-issued">["body"]["print"]>;

/** The printed reports that belong to a ledger: a folder beside its file. */
export function reportsBeside(ledgerFile: string): string {
  return join(dirname(ledgerFile), "reports");
}

/** Puts a printed report on the disk and gives what the ledger is to say of it. Throws LedgerError. */
export async function keepPrint(folder: string, { pdf, page }: Printed): Promise<Print> {
  const print = { pdf: sha256(pdf), page: sha256(page) };
  try {
    await writeBeside(folder, `${print.pdf}.pdf`, pdf);
    await writeBeside(folder, `${print.page}.html`, page);
    return print;
  } catch (cause) {
    throw new LedgerError(
      "report.folder.cannot-write",
      { folder, cause: reasonOf(cause) },
      "read-only",
      cause,
    );
  }
}

const filesOf = ({ pdf, page }: Print) => [
  { name: `${pdf}.pdf`, hash: pdf },
  { name: `${page}.html`, hash: page },
];

/** Puts the PDF of a settlement on the disk and gives its SHA-256. Throws LedgerError. */
export async function keepPdf(folder: string, pdf: Buffer): Promise<string> {
  const hash = sha256(pdf);
  try {
    await writeBeside(folder, `${hash}.pdf`, pdf);
    return hash;
  } catch (cause) {
    throw new LedgerError(
      "report.folder.cannot-write",
      { folder, cause: reasonOf(cause) },
      "read-only",
      cause,
    );
  }
}

/** The PDF of a settlement from the disk; what is wrong with it, when something is. */
export async function pdfOf(folder: string, hash: string): Promise<Buffer | { fault: Message }> {
  const name = `${hash}.pdf`;
  const found = await readBeside(folder, name, hash);
  return typeof found === "string" ? { fault: reportFiles.fault(found, name, folder) } : found;
}

/** The printed papers that a ledger names: a report with its two files, a settlement with one. */
export const reportFiles: FilesBeside = {
  folder: reportsBeside,
  async named(ledger) {
    const issued = await ledger.entries({ kind: ["report-issued", "settlement-printed"], own: true });
    return issued.flatMap((entry) => {
      if (entry.kind === "settlement-printed") {
        const { pdf } = entry.body;
        return [[{ name: `${pdf}.pdf`, hash: pdf }]];
      }
      return entry.kind === "report-issued" && entry.body.print ? [filesOf(entry.body.print)] : [];
    });
  },
  fault: (found, name, folder) =>
    found === "missing"
      ? message("report.file.missing", { name, folder })
      : message("report.file.changed", { name }),
};

/** A printed report from the disk; which of its files is missing or was changed, when one is. */
export async function printOf(folder: string, print: Print): Promise<Printed | { fault: Message }> {
  const fault = await faultOf(reportFiles, folder, filesOf(print));
  if (fault !== null) return { fault };
  const [pdf, page] = await Promise.all(filesOf(print).map(({ name }) => readFile(join(folder, name))));
  return { pdf: pdf!, page: page!.toString("utf8") };
}
