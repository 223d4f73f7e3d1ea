import { existsSync, readFileSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { parseArgs } from "node:util";
import { z } from "zod";
import { type Code, message } from "../../calibration/message.ts";
import { tell } from "../../views/messages/tell.ts";
import { type Checkpoint, readCheckpoint } from "../ledger/checkpoint.ts";
import { dataFolder, keyFileIn } from "../ledger/data-folder.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { type FilesBeside, verifyFiles } from "../ledger/named-files.ts";
import { checkRecordFile, recordFile } from "../ledger/record-file.ts";
import { publicKeyId } from "../ledger/signing-key.ts";
import { photoFiles } from "../photos/photo-folder.ts";
import { reportFiles } from "../reports/report-folder.ts";
import { ledgerForReading } from "./ledger-for-reading.ts";
import { told } from "./told.ts";

const usage = `underhook verify [FILE] [--checkpoint LINE]... [--key ID] [--chain]
  checks every row of a ledger and says how many are good, or names the first that was changed, removed,
  inserted or reordered.
  FILE              a ledger, or one record made by underhook export --record; default: the shared ledger of DATABASE_URL,
                    or ledger.sqlite in the data folder (UNDERHOOK_DATA, or ./underhook-data)
  --checkpoint LINE a checkpoint printed or sent earlier: checkpoint ROW HASH KEY SIGNATURE
  --key ID          id of the key that must have signed the ledger; default: the key beside it.
                    Every checkpoint must be its own, or of a key it vouched for
  --chain           the chain alone, not the list of records made from it, nor the photos`;

/** `underhook verify`: 0 when every row is good, 1 when one is not, 2 when it could not be checked. */
export async function run(args: string[]): Promise<number> {
  return told("verify", async () => {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        checkpoint: { type: "string", multiple: true },
        key: { type: "string" },
        chain: { type: "boolean" },
        help: { type: "boolean", short: "h" },
      },
    });
    if (values.help) {
      console.log(usage);
      return 0;
    }
    const [file] = positionals;
    if (file !== undefined && looksLikeARecord(file)) return verifyRecord(file, values.key);
    return verifyLedger(
      file,
      (values.checkpoint ?? []).map(checkpointLine),
      values.key,
      values.chain ?? false,
    );
  });
}

async function verifyLedger(
  given: string | undefined,
  checkpoints: Checkpoint[],
  key: string | undefined,
  chainOnly: boolean,
): Promise<number> {
  const ledger = await ledgerForReading("verify", given);
  const file = ledger.place;
  const keyFile = keyFileIn(given === undefined ? dataFolder() : dirname(given));
  const keyId = key ?? (existsSync(keyFile) ? publicKeyId(keyFile) : undefined);
  try {
    const found = await ledger.verify({ checkpoints, ...(keyId === undefined ? {} : { keyId }) });
    if (!found.good) {
      console.log(`${file}: not good: ${tell(found.says, "en")}`);
      console.log(`The ${found.entries} entries before it are good.`);
      return 1;
    }
    const signed =
      found.checkpoints === 0
        ? "no checkpoints"
        : `${found.checkpoints} checkpoints, signed up to row ${found.signedUpTo}`;
    console.log(`${file}: ${found.entries} entries are good; ${signed}.`);
    console.log(`Hash of the last: ${found.hash}`);
    if (keyId === undefined && found.checkpoints > 0) {
      console.log(tell({ code: "ledger.verify.nobody-vouches", params: {} }, "en"));
      return 1;
    }
    if (chainOnly) return 0;
    const list = await ledger.verifyList();
    if (!list.good) {
      console.log(`${file}: the entries are good, but not the list made from them: ${tell(list.says, "en")}`);
      console.log("Make it again from a good backup with underhook restore; the entries say what counts.");
      return 1;
    }
    console.log(`The list of ${list.records} records says what the entries say.`);
    return Math.max(
      await filesGood(ledger, photoFiles, "photo.good"),
      await filesGood(ledger, reportFiles, "report.files-good"),
    );
  } finally {
    await ledger.close();
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

function looksLikeARecord(file: string): boolean {
  return (
    existsSync(file) &&
    statSync(file).size < 2 ** 28 &&
    /^\s*\{/.test(readFileSync(file, "latin1").slice(0, 100))
  );
}

function verifyRecord(file: string, key: string | undefined): number {
  const read = recordFile.safeParse(JSON.parse(readFileSync(file, "utf8")));
  if (!read.success) {
    console.log(`${file}: not good. It is no record exported by Underhook: ${z.prettifyError(read.error)}`);
    return 1;
  }
  const found = checkRecordFile(read.data);
  if (!found.good) {
    console.log(`${file}: not good: ${tell(found.says, "en")}`);
    return 1;
  }
  if (key !== undefined && found.keyId !== key) {
    console.log(`${file}: not good: it is signed by key ${found.keyId}, not by ${key}.`);
    return 1;
  }
  console.log(
    `${file}: ${found.entries} entries about ${read.data.subject} are good and stand in a signed chain.`,
  );
  for (const { kind, seq, hash } of read.data.entries)
    if (kind === "result" || kind === "amendment") console.log(`Row ${seq}, ${kind}, has the hash ${hash}`);
  console.log(`Signed by key ${found.keyId}: compare key and hash with those printed on the report.`);
  return 0;
}

function checkpointLine(line: string): Checkpoint {
  const checkpoint = readCheckpoint(line);
  if (checkpoint) return checkpoint;
  throw new Error(
    `"${line.slice(0, 80)}" is no checkpoint. Right: the whole line as it was printed, in quotes: checkpoint ROW HASH KEY SIGNATURE.`,
  );
}
