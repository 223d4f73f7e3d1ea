import { readFileSync } from "node:fs";
import { jsonOf } from "../../ledger/chain-fault.ts";
import { checkRecordFile, isOldRecordFile, recordFile } from "../../ledger/record-file.ts";
import type { Voice } from "../command.ts";

/** Checks one record in a file of its own: 0 when it is good by a trusted key, 1 when it is not or none is trusted. */
export function verifyRecord(file: string, key: string | undefined, say: Voice): number {
  const given = jsonOf(readFileSync(file, "utf8"));
  const read = recordFile.safeParse(given);
  if (!read.success) {
    say.out(isOldRecordFile(given) ? "ledger.verify.record-old" : "ledger.verify.no-record", { file });
    return 1;
  }
  const found = checkRecordFile(read.data);
  if (!found.good) {
    say.out("cli.verify.not-good", { file, message: found.message });
    return 1;
  }
  if (key !== undefined && found.keyId !== key) {
    say.out("ledger.verify.record-other-key", { file, key: found.keyId, asked: key });
    return 1;
  }
  const { state, entries, at, upTo } = found;
  say.out("ledger.verify.record", { state, file, entries, subject: read.data.subject, at, upTo });
  for (const { kind, seq, hash } of read.data.entries)
    if (kind === "result" || kind === "amendment" || kind === "voiding")
      say.out("ledger.verify.record-row", { row: seq, kind, hash });
  say.out("ledger.verify.record-signed", { key: found.keyId });
  if (key !== undefined) return 0;
  say.out("ledger.verify.nobody-vouches");
  return 1;
}
