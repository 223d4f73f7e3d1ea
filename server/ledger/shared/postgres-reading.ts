import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import { asLedgerError } from "../error.ts";
import type { Ledger } from "../ledger.ts";
import { ledgerOn } from "../ledger-on-store.ts";
import type { Store, Tables } from "../tables.ts";
import { type Connection, connect } from "./connection.ts";
import { mustHaveSchema, type SharedTables } from "./postgres-shared.ts";
import { chainSetting, tablesOf } from "./schema.ts";

interface Reading {
  databaseUrl: string;
  now: () => Date;
  /** who reads, for messages */
  bench: string;
}

/** A chain of a shared ledger, to be read and verified by itself. */
export interface SharedChain {
  /** hash of its first entry; null for the one chain of a shared ledger from before every bench had its own */
  name: string | null;
  bench: string;
  open(): Promise<Ledger>;
}

/** The chains of a shared ledger, each bench's own, and before them the one of an older program where there is one. Throws LedgerError. */
export async function sharedChains(reading: Reading): Promise<SharedChain[]> {
  return asking(reading, async (connection) => {
    const { tables, older } = await found(connection);
    if (tables) await mustHaveSchema(connection);
    const chains = tables
      ? await connection.db.selectFrom("chains").selectAll().orderBy("chain").execute()
      : [];
    return [
      ...(older ? [{ name: null, bench: "", open: () => openOlder(reading) }] : []),
      ...chains.map(({ chain, name, bench }) => ({ name, bench, open: () => openChain(reading, chain) })),
    ];
  });
}

/** What all benches of a shared ledger wrote, as one list: records, and the entries about a subject. Throws LedgerError. */
export async function openSharedForReading(reading: Reading): Promise<Ledger> {
  const all = await asking(reading, async (connection) => {
    const { tables, older } = await found(connection);
    if (tables || !older) await mustHaveSchema(connection);
    return tables;
  });
  return all ? readingFrom(reading, { searchPath: tablesOf.all }) : openOlder(reading);
}

/** How a connection sees one chain as a ledger by itself. */
export const whereChain = (chain: number) => ({
  searchPath: `${tablesOf.oneChain},${tablesOf.all}`,
  settings: { [chainSetting]: String(chain) },
});

/** One chain as a ledger, for reading. */
export const openChain = (reading: Reading, chain: number) =>
  readingFrom(reading, { ...whereChain(chain), mayBeRetired: true });

const openOlder = (reading: Reading) => readingFrom(reading, { searchPath: "public", manySign: true });

function readingFrom(
  { databaseUrl, now, bench }: Reading,
  {
    manySign = false,
    mayBeRetired = false,
    ...where
  }: {
    searchPath: string;
    settings?: Record<string, string>;
    manySign?: boolean;
    mayBeRetired?: boolean;
  },
): Promise<Ledger> {
  const { db, place, close } = connect<Tables>({ databaseUrl, readOnly: true, ...where });
  const retired = mayBeRetired
    ? () => db.selectFrom("retired").selectAll().orderBy("after").execute()
    : undefined;
  const store: Store = {
    db,
    place,
    close,
    dialect: "postgres",
    found: [],
    manySign,
    ...(retired && { retired }),
  };
  return ledgerOn(store, { now, bench, keyFile: null, readOnly: true, newId: randomUUID });
}

/** Which tables a database has: of this program, and those in which all benches shared one chain. */
async function found({ db }: Connection<SharedTables>): Promise<{ tables: boolean; older: boolean }> {
  const { rows } = await sql<{ tables: boolean; older: boolean }>`
    select to_regclass('underhook.chains') is not null as tables, to_regclass('public.entries') is not null as older`.execute(
    db,
  );
  return rows[0] ?? { tables: false, older: false };
}

async function asking<T>(
  { databaseUrl }: Reading,
  work: (connection: Connection<SharedTables>) => Promise<T>,
): Promise<T> {
  const connection = connect<SharedTables>({ databaseUrl, searchPath: tablesOf.all, readOnly: true });
  try {
    return await work(connection);
  } catch (cause) {
    throw asLedgerError(cause, connection.place);
  } finally {
    await connection.close();
  }
}
