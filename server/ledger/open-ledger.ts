import { randomUUID } from "node:crypto";
import { existsSync, mkdirSync } from "node:fs";
import { dirname } from "node:path";
import { reasonOf } from "../../calibration/reason.ts";
import { CustomerNames } from "./customer-names.ts";
import { keyFileIn } from "./data-folder.ts";
import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";
import { ledgerOn } from "./ledger-on-store.ts";
import { pinnedKey } from "./pinned-key.ts";
import { openSqlite } from "./sqlite.ts";

export interface LedgerOptions {
  file: string;
  now: () => Date;
  /** name of the bench, written into every entry */
  bench: string;
  /** file of the Ed25519 key; default signing-key.pem beside the ledger; null for a ledger without checkpoints */
  keyFile?: string | null;
  /** only reads: takes no ownership, writes nothing, works while a bench is running */
  readOnly?: boolean;
  /** a fresh unique id; default a random UUID */
  newId?: () => string;
  /** a clock that cannot be set, ms: with it a clock set forward is written down too */
  monotonicMs?: () => number;
}

/** Opens the ledger of one bench in a file of its own, made at first start. Throws LedgerError. */
export async function openLedger(options: LedgerOptions): Promise<Ledger> {
  const { file, now, bench, readOnly = false } = options;
  if (!readOnly) makeFolder(dirname(file));
  const store = await openSqlite(file, now().toISOString(), readOnly);
  const keyFile = options.keyFile === undefined ? keyFileIn(dirname(file)) : options.keyFile;
  return ledgerOn(store, {
    now,
    bench,
    keyFile: readOnly ? null : keyFile,
    signWith: readOnly && keyFile !== null && existsSync(keyFile) ? keyFile : null,
    readOnly,
    newId: options.newId ?? randomUUID,
    monotonicMs: options.monotonicMs,
    pinned: pinnedKey(dirname(file)),
    names: new CustomerNames(file),
  });
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new LedgerError(
      "ledger.folder.cannot-make",
      { folder, cause: reasonOf(cause) },
      "read-only",
      cause,
    );
  }
}
