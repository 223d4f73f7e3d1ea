import { parseArgs } from "node:util";
import { restore } from "../ledger/backup.ts";
import { ledgerFile } from "../ledger/data-folder.ts";
import { copyFiles } from "../ledger/named-files.ts";
import { photoFiles } from "../photos/photo-folder.ts";
import { reportFiles } from "../reports/report-folder.ts";
import { toldOfCopied } from "./files-copied.ts";
import { told } from "./told.ts";

const usage = `underhook restore BACKUP [--ledger FILE] [--until MOMENT|ROW]
  makes the ledger again from a backup, whole or up to a moment (2026-03-02T12:00:00Z) or a row.
  The ledger that stands there is moved aside, never overwritten. Close the bench first.
  --ledger FILE  default: ledger.sqlite in the data folder (UNDERHOOK_DATA, or ./underhook-data)`;

/** `underhook restore`: 0 when the ledger is in place, 1 when the backup is damaged, 2 otherwise. */
export async function run(args: string[]): Promise<number> {
  return told("restore", async () => {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        ledger: { type: "string" },
        until: { type: "string" },
        help: { type: "boolean", short: "h" },
      },
    });
    const [from] = positionals;
    if (values.help || from === undefined) {
      console.log(usage);
      return values.help ? 0 : 2;
    }
    const file = values.ledger ?? ledgerFile();
    const { entries, movedAway } = await restore(from, file, new Date().toISOString(), values.until);
    console.log(`${file}: ${entries} entries restored from ${from}.`);
    if (movedAway !== null) console.log(`The ledger that stood there is kept as ${movedAway}.`);
    const photos = toldOfCopied("photo.copied", await copyFiles(photoFiles, from, file, () => new Date()));
    return Math.max(
      photos,
      toldOfCopied("report.files-copied", await copyFiles(reportFiles, from, file, () => new Date())),
    );
  });
}
