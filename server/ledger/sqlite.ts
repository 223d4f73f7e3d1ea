import { existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  Kysely,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from "kysely";
import type { Message } from "../../calibration/message.ts";
import { asLedgerError, LedgerError } from "./error.ts";
import { onlyForItsOwner, own } from "./owner.ts";
import { type Database, openDatabase } from "./sqlite-thread.ts";
import type { Store, Tables } from "./tables.ts";
import { unfinishedWrites } from "./wal-recovery.ts";

/** How long a statement waits for another process (a backup, a verify) to let go of the file, ms. */
const busyMs = 5000;

/**
 * Opens the ledger file, made when it does not exist yet. Writing: takes the ownership of the file, write-ahead log,
 * every commit on the disk before it is acknowledged (synchronous = FULL, read back). Statements run in a thread of their
 * own, so that a slow disk holds up no line of a balance.
 * Throws LedgerError: in-use, read-only, damaged, disk-full, missing.
 */
export async function openSqlite(file: string, at: string, readOnly: boolean): Promise<Store> {
  try {
    if (readOnly && !existsSync(file)) throw new LedgerError("ledger.missing", { file }, "missing");
    const ownership = readOnly ? undefined : own(file, at);
    try {
      const found = readOnly ? [] : unfinishedWrites(file, at);
      if (!readOnly) onlyForItsOwner(file);
      const database = readOnly ? await openForReading(file) : await openDatabase(file, { timeout: busyMs });
      try {
        await prepare(database, readOnly);
        return store(database, file, found, ownership && (() => ownership.release()));
      } catch (cause) {
        await database.close();
        throw cause;
      }
    } catch (cause) {
      ownership?.release();
      throw cause;
    }
  } catch (cause) {
    throw asLedgerError(cause, file);
  }
}

/**
 * Opens a file without writing anything. Beside a ledger with a write-ahead log SQLite makes small files of its own; on a
 * medium that takes none, the file is read as it is (sqlite.org/uri.html, "immutable"), if its log was emptied.
 */
async function openForReading(file: string): Promise<Database> {
  const database = await openDatabase(file, { readOnly: true, timeout: busyMs });
  try {
    await database.run("select 1 from sqlite_master limit 1");
    return database;
  } catch (cause) {
    await database.close();
    const wal = `${file}-wal`;
    if (existsSync(wal) && statSync(wal).size > 0) throw cause;
    const asIs = pathToFileURL(resolve(file));
    asIs.searchParams.set("immutable", "1");
    return openDatabase(asIs.href, { readOnly: true, timeout: busyMs });
  }
}

async function prepare(database: Database, readOnly: boolean): Promise<void> {
  for (const rule of ["foreign_keys = on", "recursive_triggers = on", "trusted_schema = off"])
    await database.run(`pragma ${rule}`);
  if (readOnly) return;
  await database.run("pragma journal_mode = wal");
  await database.run("pragma synchronous = full");
  const mode = await pragma(database, "journal_mode");
  const synchronous = await pragma(database, "synchronous");
  if (mode !== "wal" || synchronous !== 2)
    throw new LedgerError(
      "ledger.disk.not-durable",
      { mode: String(mode), synchronous: String(synchronous) },
      "read-only",
    );
}

/** The value of a one-value pragma. */
async function pragma(database: Database, name: string): Promise<unknown> {
  const { rows } = await database.run(`pragma ${name}`);
  return Object.values(rows[0] ?? {})[0];
}

function store(database: Database, file: string, found: Message[], release: (() => void) | undefined): Store {
  const db = new Kysely<Tables>({ dialect: new BenchDialect(database) });
  return {
    db,
    place: file,
    dialect: "sqlite",
    found,
    async close() {
      // The library frees a connection only when its statements are collected, so the log is emptied by hand.
      if (database.isOpen && release) await database.run("pragma wal_checkpoint(truncate)");
      await db.destroy();
      await database.close();
      release?.();
    },
  };
}

/** One connection, given to one transaction or statement at a time; it works in a thread of its own. */
class BenchDriver implements Driver {
  readonly #connection: DatabaseConnection;
  #free: Promise<void> = Promise.resolve();
  #release: () => void = () => {};

  constructor(database: Database) {
    this.#connection = {
      executeQuery: async <R>({ sql, parameters }: CompiledQuery) =>
        (await database.run(sql, parameters)) as QueryResult<R>,
      streamQuery: () => {
        throw new Error("The ledger is read in pages, not as a stream.");
      },
    };
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<DatabaseConnection> {
    const before = this.#free;
    let release = () => {};
    this.#free = new Promise((resolve) => {
      release = resolve;
    });
    await before;
    this.#release = release;
    return this.#connection;
  }

  async releaseConnection(): Promise<void> {
    this.#release();
  }

  /** Transactions take the write lock at once, so that two can never both read the same last entry. */
  async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin immediate"));
  }

  async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("commit"));
  }

  /** SQLite has already rolled back by itself when the disk was full; the cause must not be hidden by a second try. */
  async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    try {
      await connection.executeQuery(CompiledQuery.raw("rollback"));
    } catch (cause) {
      if (!(cause instanceof Error) || !/no transaction is active/.test(cause.message)) throw cause;
    }
  }

  async destroy(): Promise<void> {}
}

class BenchDialect implements Dialect {
  readonly #database: Database;
  constructor(database: Database) {
    this.#database = database;
  }
  createDriver = () => new BenchDriver(this.#database);
  createQueryCompiler = () => new SqliteQueryCompiler();
  createAdapter = () => new SqliteAdapter();
  createIntrospector = (db: Kysely<unknown>) => new SqliteIntrospector(db);
}
