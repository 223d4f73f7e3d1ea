import { ledgerFile } from "../ledger/data-folder.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { openLedger } from "../ledger/open-ledger.ts";
import type { SharedChain } from "../ledger/shared/postgres-reading.ts";

/** The options that say which ledger is meant: its file, or the data folder it lies in. */
export const ledgerOptions = { ledger: { type: "string" }, data: { type: "string" } } as const;

interface GivenLedger {
  ledger?: string | undefined;
  data?: string | undefined;
}

/** The file that was given, or that of the folder that was given; undefined where neither was. */
export const givenLedger = ({ ledger, data }: GivenLedger): string | undefined =>
  ledger ?? (data === undefined ? undefined : ledgerFile(data));

const reading = (command: string) => ({ now: () => new Date(), bench: command, readOnly: true });

/** The shared ledger of DATABASE_URL, where it is meant because no file was given. */
const sharedBy = (file: string | undefined) => (file === undefined ? process.env.DATABASE_URL : undefined);

/**
 * The ledger a command reads: the file it was given, else the shared one of DATABASE_URL as a list of all benches, else
 * the bench's own. Throws LedgerError.
 */
export async function ledgerForReading(command: string, file: string | undefined): Promise<Ledger> {
  const databaseUrl = sharedBy(file);
  return databaseUrl
    ? (await import("../ledger/shared/postgres-reading.ts")).openSharedForReading({
        ...reading(command),
        databaseUrl,
      })
    : openLedger({ ...reading(command), file: file ?? ledgerFile() });
}

/** The chains that are meant: that of the file, or those of all benches in the shared ledger of DATABASE_URL. Throws LedgerError. */
export async function chainsForReading(command: string, file: string | undefined): Promise<SharedChain[]> {
  const databaseUrl = sharedBy(file);
  if (databaseUrl)
    return (await import("../ledger/shared/postgres-reading.ts")).sharedChains({
      ...reading(command),
      databaseUrl,
    });
  return [{ name: null, bench: "", open: () => ledgerForReading(command, file) }];
}
