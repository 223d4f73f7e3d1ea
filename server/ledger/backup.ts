import { chmodSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import { backup, DatabaseSync } from "@photostructure/sqlite";
import { message } from "../../calibration/message.ts";
import { appendTo } from "./append.ts";
import { asLedgerError, LedgerError } from "./error.ts";
import { own } from "./owner.ts";
import { rebuildRecords } from "./projection.ts";
import { migrate } from "./schema.ts";
import { openSqlite } from "./sqlite.ts";
import type { EntryRow, Store } from "./tables.ts";
import { verifyChain } from "./verification.ts";

/**
 * Copies a ledger to `target` while a bench may be writing it, as it stood at one moment. The copy is checked
 * entry by entry before it gets its name. The signing key is not in it. Gives how many entries it holds.
 * Throws LedgerError; then there is no `target`.
 */
export async function backUp(file: string, target: string): Promise<{ entries: number; hash: string }> {
  mustBeFree(target);
  const part = `${target}.part`;
  mustExist(file);
  try {
    rmSync(part, { force: true });
    mkdirSync(dirname(target), { recursive: true });
    const from = new DatabaseSync(file, { readOnly: true, timeout: 5000 });
    // All pages in one step: one moment of the ledger, however busy the bench is; readers never hold up a writer.
    await backup(from, part, { rate: -1 }).finally(() => from.close());
    chmodSync(part, 0o600);
    const { entries, hash } = await mustBeGood(part);
    for (const rest of ["-wal", "-shm"]) rmSync(part + rest, { force: true });
    renameSync(part, target);
    return { entries, hash };
  } catch (cause) {
    for (const rest of ["", "-wal", "-shm"]) rmSync(part + rest, { force: true });
    throw asLedgerError(cause, file);
  }
}

export interface Restored {
  entries: number;
  /** where the ledger that stood there before was moved; null when there was none */
  movedAway: string | null;
}

/**
 * Makes a ledger at `file` from a backup: whole, or up to a moment (ISO 8601) or a row. The entries keep their
 * hashes. A ledger that stands there is moved aside, never overwritten. A last entry says that and from what it
 * was restored. Throws LedgerError, also while a bench is writing `file`.
 */
export async function restore(from: string, file: string, at: string, until?: string): Promise<Restored> {
  mustExist(from);
  await mustBeGood(from);
  const source = await openSqlite(from, at, true);
  const part = `${file}.restoring`;
  for (const rest of ["", "-wal", "-shm"]) rmSync(part + rest, { force: true });
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const held = own(file, at);
  const target = await openSqlite(part, at, false);
  try {
    await migrate(target, at);
    const last = until === undefined ? undefined : await lastRowUntil(source, until);
    const entries = await copyRows(source, target, last);
    await target.db.transaction().execute((trx) => rebuildRecords(trx));
    const sentence =
      until === undefined
        ? message("ledger.recovery.restored", { from, entries })
        : message("ledger.recovery.restored-until", { from, until, entries });
    const bench = "restore";
    await appendTo(
      target,
      { id: `restore-${at}`, bench, at, kind: "recovery", subject: "ledger", body: { says: sentence } },
      undefined,
    );
    await target.close();
    return { entries, movedAway: putInPlace(part, file, at) };
  } catch (cause) {
    await target.close();
    throw asLedgerError(cause, file);
  } finally {
    held.release();
    await source.close();
    for (const rest of ["-owner", "-owner.txt", "-wal", "-shm"]) rmSync(part + rest, { force: true });
  }
}

async function mustBeGood(file: string): Promise<{ entries: number; hash: string }> {
  const store = await openSqlite(file, "", true);
  try {
    const found = await verifyChain(store, {});
    if (found.good) return found;
    throw new LedgerError("ledger.backup.not-good", { file, fault: found.message }, "damaged");
  } finally {
    await store.close();
  }
}

function mustBeFree(target: string): void {
  if (existsSync(target)) throw new LedgerError("ledger.backup.file-exists", { file: target }, "refused");
}

async function lastRowUntil({ db, place }: Store, until: string): Promise<number> {
  const byRow = /^\d+$/.test(until);
  if (!byRow && Number.isNaN(Date.parse(until)))
    throw new LedgerError("ledger.backup.no-moment", { until }, "refused");
  const rows = db.selectFrom("entries").select((select) => select.fn.max("seq").as("seq"));
  const limit = byRow
    ? rows.where("seq", "<=", Number(until))
    : rows.where("at", "<=", new Date(until).toISOString());
  const { seq } = await limit.executeTakeFirstOrThrow();
  if (seq === null) throw new LedgerError("ledger.backup.no-entry", { place, until }, "refused");
  return Number(seq);
}

async function copyRows(source: Store, target: Store, last = Number.MAX_SAFE_INTEGER): Promise<number> {
  for (let after = 0; ; ) {
    const rows: EntryRow[] = await source.db
      .selectFrom("entries")
      .selectAll()
      .where("seq", ">", after)
      .where("seq", "<=", last)
      .orderBy("seq")
      .limit(1000)
      .execute();
    const end = rows.at(-1);
    if (!end) return after;
    await target.db.transaction().execute(async (trx) => {
      for (const row of rows)
        await trx
          .insertInto("entries")
          .values({ ...row })
          .execute();
    });
    after = end.seq;
  }
}

function putInPlace(part: string, file: string, at: string): string | null {
  const movedTo = existsSync(file) ? `${file}.before-restore-${at.replaceAll(":", "-")}` : null;
  for (const rest of ["", "-wal", "-shm"])
    if (movedTo !== null && existsSync(file + rest)) renameSync(file + rest, movedTo + rest);
  renameSync(part, file);
  return movedTo;
}

function mustExist(file: string): void {
  if (!existsSync(file)) throw new LedgerError("ledger.missing", { file }, "missing");
}
