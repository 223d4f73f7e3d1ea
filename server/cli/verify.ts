import { existsSync, statSync } from "node:fs";
import { dirname } from "node:path";
import type { Code } from "../../calibration/message.ts";
import { dataFolder, keyFileIn, ledgerFile } from "../ledger/data-folder.ts";
import { LedgerError } from "../ledger/error.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { type FilesBeside, verifyFiles } from "../ledger/named-files.ts";
import type { SharedChain } from "../ledger/shared/postgres-reading.ts";
import { publicKeyId } from "../ledger/signing-key.ts";
import { photoFiles } from "../photos/photo-folder.ts";
import { reportFiles } from "../reports/report-folder.ts";
import { command, type Voice } from "./command.ts";
import { chainsForReading, givenLedger, ledgerForReading, ledgerOptions } from "./ledger-for-reading.ts";
import { verifyRecord } from "./verify/record.ts";
import { verifyReport } from "./verify/report.ts";
import { type GivenTrust, trustFor, trustIn } from "./verify/trust.ts";
import { kindOfFile } from "./verify/what-file.ts";

const goodBy = {
  key: "ledger.verify.by-key",
  pin: "ledger.verify.by-pin",
  checkpoint: "ledger.verify.by-checkpoint",
} as const;

const usage = {
  name: "verify",
  options: {
    checkpoint: { type: "string", multiple: true, default: [] as string[] },
    key: { type: "string", multiple: true, default: [] as string[] },
    ...ledgerOptions,
    chain: { type: "boolean", default: false },
  },
  takesArguments: true,
} as const;

/** `underhook verify`: 0 when every row is good by a trusted key, 1 when one is not or none is trusted, 2 when it could not be checked. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values, positionals: [named], say }) => {
    // a data folder stands for the ledger in it
    const isFolder = named !== undefined && statSync(named, { throwIfNoEntry: false })?.isDirectory();
    const file = isFolder ? ledgerFile(named) : named;
    const kind = file === undefined ? "ledger" : kindOfFile(file);
    const given = givenLedger(values);
    const ledger = kind === "ledger" ? (file ?? given) : given;
    const folder = ledger === undefined ? dataFolder() : dirname(ledger);
    const trust = trustIn(folder, values.key, values.checkpoint);
    if (file !== undefined && kind === "record") return verifyRecord(file, trust.keyId, say);
    if (file !== undefined && kind === "report") return verifyReport(file, { ledger, trust, say });
    const asked = { folder, trust, chainOnly: values.chain, say };
    const chains = await chainsForReading("verify", ledger);
    const [only] = chains;
    return only && chains.length === 1 && only.name === null
      ? verifyLedger(only, asked)
      : verifyShared(chains, asked);
  });

interface Asked {
  folder: string;
  trust: GivenTrust;
  chainOnly: boolean;
  say: Voice;
}

/** Each chain by itself, then the list that all of them make. */
async function verifyShared(chains: readonly SharedChain[], asked: Asked): Promise<number> {
  let worst = 0;
  for (const chain of chains)
    worst = Math.max(worst, await verifyLedger(chain, { ...asked, chainOnly: true }));
  if (worst > 0 || asked.chainOnly) return worst;
  const all = await ledgerForReading("verify", undefined);
  try {
    return await listAndFilesGood(all, asked.say);
  } finally {
    await all.close();
  }
}

async function verifyLedger(
  chain: SharedChain,
  { folder, trust: given, chainOnly, say }: Asked,
): Promise<number> {
  const ledger = await chain.open();
  const file = chain.bench === "" ? ledger.place : `${ledger.place} (${chain.bench})`;
  try {
    const trust = chain.name === null ? given : await trustFor(ledger, given);
    const found = await ledger.verify(trust);
    if (!found.good) {
      say.out("cli.verify.not-good", { file, message: found.message });
      const { entries, signedUpTo } = found;
      say.out("ledger.verify.before", { entries, signedUpTo });
      return 1;
    }
    const { entries, checkpoints, signedUpTo, hash } = found;
    say.out("ledger.verify.whole", { file, entries, checkpoints, signedUpTo });
    say.out("cli.verify.last-hash", { hash });
    for (const keyId of found.signedBy) say.out("cli.verify.signed-by", { key: keyId });
    for (const message of found.notShown) say.out(message.code, message.params);
    if (trust.keyId === undefined) {
      say.out("ledger.verify.nobody-vouches");
      if (existsSync(keyFileIn(folder)))
        say.out("ledger.verify.own-folder", { key: publicKeyId(keyFileIn(folder)) });
      return 1;
    }
    say.out(goodBy[trust.from], { key: trust.keyId });
    return chainOnly ? 0 : await listAndFilesGood(ledger, say);
  } finally {
    await ledger.close();
  }
}

/** The list of records and the files beside the ledger. Entries that no program can read make them not good. */
async function listAndFilesGood(ledger: Ledger, say: Voice): Promise<number> {
  try {
    const list = await ledger.verifyList();
    if (!list.good) {
      say.out("cli.verify.list-not-good", { message: list.message });
      return 1;
    }
    say.out("cli.verify.list-good", { records: list.records });
    return Math.max(
      await filesGood(ledger, photoFiles, "photo.good", say),
      await filesGood(ledger, reportFiles, "report.files-good", say),
    );
  } catch (cause) {
    if (cause instanceof LedgerError) throw cause;
    say.out("ledger.verify.entry-unreadable");
    return 1;
  }
}

/** Photos and printed reports lie beside the file of a bench; a shared ledger has none of its own. */
async function filesGood(ledger: Ledger, kind: FilesBeside, code: Code, say: Voice): Promise<number> {
  if (!existsSync(ledger.place)) return 0;
  const { count, wrong } = await verifyFiles(kind, ledger, kind.folder(ledger.place));
  for (const fault of wrong) say.out("ledger.files.not-good", { fault });
  if (wrong.length === 0 && count > 0) say.out(code, { count });
  return wrong.length === 0 ? 0 : 1;
}
