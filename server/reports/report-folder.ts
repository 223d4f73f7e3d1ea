import { copyFile, mkdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { EntryOf } from "../ledger/entry.ts";
import { LedgerError } from "../ledger/error.ts";
import { readBeside, sha256, writeBeside } from "../ledger/file-beside.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { openLedger } from "../ledger/open-ledger.ts";

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
      { folder, cause: (cause as Error).message },
      "read-only",
      cause,
    );
  }
}

/** A printed report from the disk; which of its files is missing or was changed, when one is. */
export async function printOf(folder: string, print: Print): Promise<Printed | { fault: string }> {
  const pdf = await readBeside(folder, `${print.pdf}.pdf`, print.pdf);
  if (typeof pdf === "string") return { fault: `${print.pdf}.pdf` };
  const page = await readBeside(folder, `${print.page}.html`, print.page);
  if (typeof page === "string") return { fault: `${print.page}.html` };
  return { pdf, page: page.toString("utf8") };
}

async function printsOf(ledger: Ledger): Promise<Print[]> {
  const issued = await ledger.entries({ kind: "report-issued" });
  return issued.flatMap((entry) =>
    entry.kind === "report-issued" && entry.body.print ? [entry.body.print] : [],
  );
}

/** How many printed reports a ledger names, and the files of them that are missing or were changed. */
export async function verifyPrints(
  ledger: Ledger,
  folder: string,
): Promise<{ reports: number; wrong: string[] }> {
  const prints = await printsOf(ledger);
  const wrong: string[] = [];
  for (const print of prints) {
    const found = await printOf(folder, print);
    if ("fault" in found) wrong.push(`the report ${found.fault} is missing from ${folder} or was changed`);
  }
  return { reports: prints.length, wrong };
}

/** Copies the printed reports a ledger names from beside one file to beside another, as photos are copied. */
export async function copyPrints(
  from: string,
  to: string,
  now: () => Date,
): Promise<{ reports: number; wrong: string[] }> {
  const ledger = await openLedger({ file: to, now, bench: "reports", readOnly: true });
  try {
    const [source, target] = [reportsBeside(from), reportsBeside(to)];
    const prints = await printsOf(ledger);
    const { wrong } = await verifyPrints(ledger, source);
    if (prints.length > 0 && source !== target) await mkdir(target, { recursive: true, mode: 0o700 });
    for (const print of source === target ? [] : prints)
      for (const name of [`${print.pdf}.pdf`, `${print.page}.html`])
        if (!wrong.some((fault) => fault.includes(name)))
          await copyFile(join(source, name), join(target, name));
    return { reports: prints.length, wrong };
  } finally {
    await ledger.close();
  }
}
