import { DatabaseSync } from "@photostructure/sqlite";
import { signedText } from "../../../server/ledger/checkpoint.ts";
import { chainHash, contentHash, noHash } from "../../../server/ledger/entry.ts";
import type { SigningKey } from "../../../server/ledger/signing-key.ts";
import type { EntryRow } from "../../../server/ledger/tables.ts";

/**
 * What somebody with every right on the machine does: takes the triggers away, works on the rows, and writes them
 * back in the order given. The rows come out of the database and go back in as they are.
 */
export function tamper(file: string, work: (rows: EntryRow[]) => EntryRow[]): void {
  const db = new DatabaseSync(file);
  for (const { name } of db.prepare("select name from sqlite_master where type = 'trigger'").all())
    db.exec(`drop trigger ${name}`);
  const rows = db
    .prepare("select * from entries order by seq")
    .all()
    .map((row: EntryRow) => ({ ...row }));
  const changed = work(rows);
  db.exec("begin; delete from entries");
  const insert = db.prepare(
    "insert into entries (seq, id, bench, at, kind, subject, body, origin, prev_hash, hash) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
  );
  for (const row of changed)
    insert.run(
      row.seq,
      row.id,
      row.bench,
      row.at,
      row.kind,
      row.subject,
      row.body,
      row.origin,
      row.prev_hash,
      row.hash,
    );
  db.exec("commit");
  db.close();
}

/**
 * Numbers and hashes every row again; with a key, signs every checkpoint and introduces the key in place of the true one,
 * except where a row is named "true-…".
 */
export function rechained(rows: EntryRow[], key?: SigningKey): EntryRow[] {
  let before = noHash;
  return rows.map((row, index) => {
    let body = row.body;
    if (key && row.kind === "checkpoint")
      body = JSON.stringify({
        hash: before,
        keyId: key.keyId,
        seq: index,
        signature: key.sign(signedText(index, before)),
      });
    if (key && row.kind === "signing-key" && !row.id.startsWith("true-"))
      body = JSON.stringify({ keyId: key.keyId, publicKey: key.publicKey });
    const next = { ...row, body, seq: index + 1, prev_hash: before };
    next.hash = chainHash(contentHash(next), before);
    before = next.hash;
    return next;
  });
}
