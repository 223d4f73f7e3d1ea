import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { parseArgs } from "node:util";
import { type Checkpoint, readCheckpoint } from "../ledger/checkpoint.ts";
import { ledgerFile } from "../ledger/data-folder.ts";
import { openLedger } from "../ledger/ledger.ts";
import { publicKeyId } from "../ledger/signing-key.ts";
import { LedgerTrouble } from "../ledger/trouble.ts";

const usage = `underhook verify [FILE] [--checkpoint LINE]... [--key ID]
  checks every row of a ledger and says how many are good, or names the first that was changed, removed,
  inserted or reordered.
  FILE              default: ledger.sqlite in the data folder (UNDERHOOK_DATA, or ./underhook-data)
  --checkpoint LINE a checkpoint printed or sent earlier: checkpoint ROW HASH KEY SIGNATURE
  --key ID          id of the key that must have signed the ledger; default: the key beside it`;

/** `underhook verify`: 0 when every row is good, 1 when one is not, 2 when it could not be checked. */
export async function run(args: string[]): Promise<number> {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        checkpoint: { type: "string", multiple: true },
        key: { type: "string" },
        help: { type: "boolean", short: "h" },
      },
    });
    if (values.help) {
      console.log(usage);
      return 0;
    }
    const [file = ledgerFile()] = positionals;
    return await verifyLedger(file, (values.checkpoint ?? []).map(checkpointLine), values.key);
  } catch (cause) {
    const says = cause instanceof Error ? cause.message : String(cause);
    console.error(`underhook verify: ${says}`);
    return cause instanceof LedgerTrouble && cause.kind === "damaged" ? 1 : 2;
  }
}

async function verifyLedger(
  file: string,
  checkpoints: Checkpoint[],
  key: string | undefined,
): Promise<number> {
  const keyFile = join(dirname(file), "signing-key.pem");
  const keyId = key ?? (existsSync(keyFile) ? publicKeyId(keyFile) : undefined);
  const ledger = await openLedger({ file, now: () => new Date(), bench: "verify", readOnly: true });
  try {
    const found = await ledger.verify({ checkpoints, ...(keyId === undefined ? {} : { keyId }) });
    if (!found.good) {
      console.log(`${file}: not good. ${found.says}`);
      console.log(`The ${found.entries} entries before it are good.`);
      return 1;
    }
    const signed =
      found.checkpoints === 0
        ? "no checkpoints"
        : `${found.checkpoints} checkpoints, signed up to row ${found.signedUpTo}`;
    console.log(`${file}: ${found.entries} entries are good; ${signed}.`);
    console.log(`Hash of the last: ${found.hash}`);
    return 0;
  } finally {
    await ledger.close();
  }
}

function checkpointLine(line: string): Checkpoint {
  const checkpoint = readCheckpoint(line);
  if (checkpoint) return checkpoint;
  const shown = existsSync(line) ? readFileSync(line, "utf8").slice(0, 80) : line;
  throw new Error(
    `"${shown}" is no checkpoint. Right: the whole line as it was printed, checkpoint ROW HASH KEY SIGNATURE, in quotes.`,
  );
}
