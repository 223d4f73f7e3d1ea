import { readFileSync } from "node:fs";
import { type Message, message } from "../../../calibration/message.ts";
import { tell } from "../../../views/messages/tell.ts";
import { jsonOf } from "../../ledger/chain-fault.ts";
import { checkRecordFile, recordFile } from "../../ledger/record-file.ts";

/** Checks one record in a file of its own: 0 when it is good by a trusted key, 1 when it is not or none is trusted. */
export function verifyRecord(file: string, key: string | undefined): number {
  const says = (one: Message) => console.log(tell(one, "en"));
  const given = jsonOf(readFileSync(file, "utf8"));
  const read = recordFile.safeParse(given);
  if (!read.success) {
    const { format } = (given ?? {}) as { format?: unknown };
    const old = format === "underhook record, version 1";
    says(message(old ? "ledger.verify.record-old" : "ledger.verify.no-record", { file }));
    return 1;
  }
  const found = checkRecordFile(read.data);
  if (!found.good) {
    console.log(`${file}: not good: ${tell(found.says, "en")}`);
    return 1;
  }
  if (key !== undefined && found.keyId !== key) {
    says(message("ledger.verify.record-other-key", { file, key: found.keyId, asked: key }));
    return 1;
  }
  const { state, entries, at, upTo } = found;
  says(message("ledger.verify.record", { state, file, entries, subject: read.data.subject, at, upTo }));
  for (const { kind, seq, hash } of read.data.entries)
    if (kind === "result" || kind === "amendment" || kind === "voiding")
      says(message("ledger.verify.record-row", { row: seq, kind, hash }));
  says(message("ledger.verify.record-signed", { key: found.keyId }));
  if (key !== undefined) return 0;
  says(message("ledger.verify.nobody-vouches"));
  return 1;
}
