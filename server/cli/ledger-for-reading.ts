import { ledgerFile } from "../ledger/data-folder.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { openLedger } from "../ledger/open-ledger.ts";

/** The options that say which ledger is meant: its file, or the data folder it lies in. */
export const ledgerOptions = { ledger: { type: "string" }, data: { type: "string" } } as const;

interface GivenLedger {
  ledger?: string | undefined;
  data?: string | undefined;
}

/** The file that was given, or that of the folder that was given; undefined where neither was. */
export const givenLedger = ({ ledger, data }: GivenLedger): string | undefined =>
  ledger ?? (data === undefined ? undefined : ledgerFile(data));

/**
 * The ledger a command reads: the file it was given, else the shared one of DATABASE_URL, else the bench's own.
 * Throws LedgerError.
 */
export async function ledgerForReading(command: string, file: string | undefined): Promise<Ledger> {
  const reading = { now: () => new Date(), bench: command, readOnly: true };
  const databaseUrl = process.env.DATABASE_URL;
  return file === undefined && databaseUrl
    ? (await import("../ledger/postgres.ts")).openSharedLedger({ ...reading, databaseUrl, keyFile: null })
    : openLedger({ ...reading, file: file ?? ledgerFile() });
}
