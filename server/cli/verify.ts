import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { parseArgs } from "node:util";
import { type Code, message } from "../../calibration/message.ts";
import { tell } from "../../views/messages/tell.ts";
import { dataFolder, keyFileIn } from "../ledger/data-folder.ts";
import { LedgerError } from "../ledger/error.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { type FilesBeside, verifyFiles } from "../ledger/named-files.ts";
import { publicKeyId } from "../ledger/signing-key.ts";
import { photoFiles } from "../photos/photo-folder.ts";
import { reportFiles } from "../reports/report-folder.ts";
import { ledgerForReading } from "./ledger-for-reading.ts";
import { told } from "./told.ts";
import { verifyRecord } from "./verify/record.ts";
import { verifyReport } from "./verify/report.ts";
import { type GivenTrust, trustIn } from "./verify/trust.ts";
import { kindOfFile } from "./verify/what-file.ts";

const usage = `underhook verify [FILE] [--ledger FILE] [--key KEY] [--checkpoint LINE|FILE]... [--chain]
  checks every row of a ledger and says how many are good, or names the first that was changed, removed,
  inserted or reordered.
  FILE              a ledger, or one record made by underhook export --record, or a report as it was issued (PDF);
                    default: the shared ledger of DATABASE_URL, or ledger.sqlite in the data folder (UNDERHOOK_DATA, or
                    ./underhook-data)
  --ledger FILE     the ledger a report is looked up in; default as above
  --key KEY         the key that must have signed it, as printed on a report: 64 hexadecimal digits, or NAME+ID+KEY.
                    Every checkpoint must be its own, or of a key it vouched for.
                    Default: the key pinned beside the data folder, in the file FOLDER.trusted-key
  --checkpoint      a checkpoint kept elsewhere: the line "checkpoint ROW HASH KEY SIGNATURE", or a file with a signed note
  --chain           the chain alone, not the list of records made from it, nor photos and reports
  A key that lies in the ledger's own folder proves nothing: who can write there can exchange both.`;

const goodBy = {
  key: "ledger.verify.by-key",
  pin: "ledger.verify.by-pin",
  checkpoint: "ledger.verify.by-checkpoint",
} as const;

/** `underhook verify`: 0 when every row is good by a trusted key, 1 when one is not or none is trusted, 2 when it could not be checked. */
export async function run(args: string[]): Promise<number> {
  return told("verify", async () => {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        checkpoint: { type: "string", multiple: true, default: [] },
        key: { type: "string" },
        ledger: { type: "string" },
        chain: { type: "boolean", default: false },
        help: { type: "boolean", short: "h" },
      },
    });
    if (values.help) {
      console.log(usage);
      return 0;
    }
    const [file] = positionals;
    const kind = file === undefined ? "ledger" : kindOfFile(file);
    const ledger = kind === "ledger" ? file : values.ledger;
    const folder = ledger === undefined ? dataFolder() : dirname(ledger);
    const trust = trustIn(folder, values.key, values.checkpoint);
    if (file !== undefined && kind === "record") return verifyRecord(file, trust.keyId);
    if (file !== undefined && kind === "report") return verifyReport(file, ledger, trust);
    return verifyLedger(file, folder, trust, values.chain);
  });
}

async function verifyLedger(
  given: string | undefined,
  folder: string,
  trust: GivenTrust,
  chainOnly: boolean,
): Promise<number> {
  const ledger = await ledgerForReading("verify", given);
  const file = ledger.place;
  try {
    const found = await ledger.verify(trust);
    if (!found.good) {
      console.log(`${file}: not good: ${tell(found.says, "en")}`);
      const { entries, signedUpTo } = found;
      console.log(tell(message("ledger.verify.before", { entries, signedUpTo }), "en"));
      return 1;
    }
    const { entries, checkpoints, signedUpTo, hash } = found;
    console.log(tell(message("ledger.verify.whole", { file, entries, checkpoints, signedUpTo }), "en"));
    console.log(`Hash of the last: ${hash}`);
    for (const keyId of found.signedBy) console.log(`Signed by key ${keyId}`);
    for (const says of found.notShown) console.log(tell(says, "en"));
    if (trust.keyId === undefined) {
      console.log(tell(message("ledger.verify.nobody-vouches"), "en"));
      if (existsSync(keyFileIn(folder)))
        console.log(tell(message("ledger.verify.own-folder", { key: publicKeyId(keyFileIn(folder)) }), "en"));
      return 1;
    }
    console.log(tell(message(goodBy[trust.from], { key: trust.keyId }), "en"));
    return chainOnly ? 0 : await listAndFilesGood(ledger);
  } finally {
    await ledger.close();
  }
}

/** The list of records and the files beside the ledger. Entries that no program can read make them not good. */
async function listAndFilesGood(ledger: Ledger): Promise<number> {
  try {
    const list = await ledger.verifyList();
    if (!list.good) {
      console.log(`The entries are good, but not the list made from them: ${tell(list.says, "en")}`);
      console.log("Make it again from a good backup with underhook restore; the entries say what counts.");
      return 1;
    }
    console.log(`The list of ${list.records} records says what the entries say.`);
    return Math.max(
      await filesGood(ledger, photoFiles, "photo.good"),
      await filesGood(ledger, reportFiles, "report.files-good"),
    );
  } catch (cause) {
    if (cause instanceof LedgerError) throw cause;
    console.log(tell(message("ledger.verify.entry-unreadable"), "en"));
    return 1;
  }
}

/** Photos and printed reports lie beside the file of a bench; a shared ledger has none of its own. */
async function filesGood(ledger: Ledger, kind: FilesBeside, code: Code): Promise<number> {
  if (!existsSync(ledger.place)) return 0;
  const { count, wrong } = await verifyFiles(kind, ledger, kind.folder(ledger.place));
  for (const fault of wrong) console.log(tell(message("ledger.files.not-good", { fault }), "en"));
  if (wrong.length === 0 && count > 0) console.log(tell(message(code, { count }), "en"));
  return wrong.length === 0 ? 0 : 1;
}
