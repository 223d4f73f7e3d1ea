import { existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { DatabaseSync } from "@photostructure/sqlite";
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
} from "kysely";
import type { Message } from "../../calibration/message.ts";
import { asLedgerError, LedgerError } from "./error.ts";
import { onlyForItsOwner, own } from "./owner.ts";
import type { Store, Tables } from "./tables.ts";
import { Turns } from "./turns.ts";
import { unfinishedWrites } from "./wal-recovery.ts";

type Database = InstanceType<typeof DatabaseSync>;

/** How long a statement waits for another process (a backup, a verify) to let go of the file, ms. */
const busyMs = 5000;

/**
 * Opens the ledger file, made when it does not exist yet. Writing: takes the ownership of the file, write-ahead log,
 * every commit on the disk before it is acknowledged (synchronous = FULL, read back).
 * Throws LedgerError: in-use, read-only, damaged, disk-full, missing.
 */
export function openSqlite(file: string, at: string, readOnly: boolean): Store {
  try {
    if (readOnly && !existsSync(file)) throw new LedgerError("ledger.missing", { file }, "missing");
    const ownership = readOnly ? undefined : own(file, at);
    try {
      const found = readOnly ? [] : unfinishedWrites(file, at);
      if (!readOnly) onlyForItsOwner(file);
      const database = readOnly ? openForReading(file) : new DatabaseSync(file, { timeout: busyMs });
      try {
        prepare(database, readOnly);
        return store(database, file, found, ownership && (() => ownership.release()));
      } catch (cause) {
        database.close();
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
function openForReading(file: string): Database {
  const database = new DatabaseSync(file, { readOnly: true, timeout: busyMs });
  try {
    database.exec("select 1 from sqlite_master limit 1");
    return database;
  } catch (cause) {
    database.close();
    const wal = `${file}-wal`;
    if (existsSync(wal) && statSync(wal).size > 0) throw cause;
    const asIs = pathToFileURL(resolve(file));
    asIs.searchParams.set("immutable", "1");
    return new DatabaseSync(asIs, { readOnly: true, timeout: busyMs });
  }
}

function prepare(database: Database, readOnly: boolean): void {
  database.exec("pragma foreign_keys = on; pragma recursive_triggers = on; pragma trusted_schema = off");
  if (readOnly) return;
  database.exec("pragma journal_mode = wal; pragma synchronous = full");
  const mode = pragma(database, "journal_mode");
  const synchronous = pragma(database, "synchronous");
  if (mode !== "wal" || synchronous !== 2)
    throw new LedgerError(
      "ledger.disk.not-durable",
      { mode: String(mode), synchronous: String(synchronous) },
      "read-only",
    );
}

/** The value of a one-value pragma. */
function pragma(database: Database, name: string): unknown {
  return Object.values(database.prepare(`pragma ${name}`).get() ?? {})[0];
}

function store(database: Database, file: string, found: Message[], release: (() => void) | undefined): Store {
  const db = new Kysely<Tables>({ dialect: new BenchDialect({ database: forKysely(database) }) });
  return {
    db,
    place: file,
    dialect: "sqlite",
    found,
    async close() {
      // The library frees a connection only when its statements are collected, so the log is emptied by hand.
      if (database.isOpen && release) database.exec("pragma wal_checkpoint(truncate)");
      await db.destroy();
      if (database.isOpen) database.close();
      release?.();
    },
  };
}

/** The face Kysely expects. Statements are kept, as the ledger asks the same few again and again. */
function forKysely(database: Database): Extract<SqliteDialectConfig["database"], object> {
  const kept = new Map<string, ReturnType<typeof statement>>();
  const statement = (text: string) => {
    const prepared = database.prepare(text);
    return {
      reader: prepared.columns().length > 0,
      all: (parameters: ReadonlyArray<unknown>) => prepared.all(...parameters),
      run: (parameters: ReadonlyArray<unknown>) => prepared.run(...parameters),
      iterate: (parameters: ReadonlyArray<unknown>) => prepared.iterate(...parameters),
    };
  };
  return {
    close: () => database.close(),
    prepare(text: string) {
      const known = kept.get(text);
      if (known) return known;
      const fresh = statement(text);
      if (kept.size < 100 && !/^\s*(create|alter|drop|pragma)/i.test(text)) kept.set(text, fresh);
      return fresh;
    },
  };
}

/** Transactions take the write lock at once, so that two can never both read the same last entry. */
class BenchDriver extends SqliteDriver {
  readonly #turns = new Turns();

  /** Statements run to their end at once, so that a page that asks many of them would keep everything else waiting. */
  override async acquireConnection(): Promise<DatabaseConnection> {
    await this.#turns.due();
    return super.acquireConnection();
  }
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin immediate"));
  }
  /** SQLite has already rolled back by itself when the disk was full; the cause must not be hidden by a second try. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    try {
      await super.rollbackTransaction(connection);
    } catch (cause) {
      if (!(cause instanceof Error) || !/no transaction is active/.test(cause.message)) throw cause;
    }
  }
}

class BenchDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;
  constructor(config: SqliteDialectConfig) {
    super(config);
    this.#config = config;
  }
  override createDriver() {
    return new BenchDriver(this.#config);
  }
}
