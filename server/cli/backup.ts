import { join } from "node:path";
import { parseArgs } from "node:util";
import { backUp } from "../ledger/backup.ts";
import { dataFolder, ledgerFile } from "../ledger/data-folder.ts";
import { copyFiles } from "../ledger/named-files.ts";
import { photoFiles } from "../photos/photo-folder.ts";
import { reportFiles } from "../reports/report-folder.ts";
import { toldOfCopied } from "./files-copied.ts";
import { told } from "./told.ts";

const usage = `underhook backup [TARGET] [--ledger FILE]
  copies the ledger as it stands at one moment, also while a bench is writing it, and checks the copy.
  TARGET         default: backups/ledger-MOMENT.sqlite in the data folder; never overwritten
  --ledger FILE  default: ledger.sqlite in the data folder (UNDERHOOK_DATA, or ./underhook-data)
  The photos and printed reports go into the folders photos and reports beside it.
  The signing key is not in the copy: keep signing-key.pem safe elsewhere.`;

/** `underhook backup`: 0 when the copy is made and good, 1 when the ledger is damaged, 2 otherwise. */
export async function run(args: string[]): Promise<number> {
  return told("backup", async () => {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: { ledger: { type: "string" }, help: { type: "boolean", short: "h" } },
    });
    if (values.help) {
      console.log(usage);
      return 0;
    }
    const stamp = new Date().toISOString().replaceAll(":", "-");
    const [target = join(dataFolder(), "backups", `ledger-${stamp}.sqlite`)] = positionals;
    const file = values.ledger ?? ledgerFile();
    const { entries, hash } = await backUp(file, target);
    console.log(`${target}: ${entries} entries, all good. Hash of the last: ${hash}`);
    const photos = toldOfCopied("photo.copied", await copyFiles(photoFiles, file, target, () => new Date()));
    return Math.max(
      photos,
      toldOfCopied("report.files-copied", await copyFiles(reportFiles, file, target, () => new Date())),
    );
  });
}
