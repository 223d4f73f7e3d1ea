import { closeSync, existsSync, openSync, readSync } from "node:fs";

/** What a file holds, by its first bytes: a record exported as JSON, a report as PDF (ISO 32000), or else a ledger. */
export function kindOfFile(file: string): "record" | "report" | "ledger" {
  if (beginningOf(file).startsWith("%PDF-")) return "report";
  return /^\s*\{/.test(beginningOf(file)) ? "record" : "ledger";
}

function beginningOf(file: string): string {
  if (!existsSync(file)) return "";
  const handle = openSync(file, "r");
  try {
    const bytes = Buffer.alloc(100);
    return bytes.toString("latin1", 0, readSync(handle, bytes));
  } finally {
    closeSync(handle);
  }
}
