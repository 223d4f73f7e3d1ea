import { readFileSync } from "node:fs";
import { message } from "../../../calibration/message.ts";
import { tell } from "../../../views/messages/tell.ts";
import { jsonOf } from "../../ledger/chain-fault.ts";
import { checkRecordFile, recordFile } from "../../ledger/record-file.ts";

/** Checks one record in a file of its own: 0 when it is good, 1 when it is not. */
export function verifyRecord(file: string, key: string | undefined): number {
  const read = recordFile.safeParse(jsonOf(readFileSync(file, "utf8")));
  if (!read.success) {
    console.log(tell(message("ledger.verify.no-record", { file }), "en"));
    return 1;
  }
  const found = checkRecordFile(read.data);
  if (!found.good) {
    console.log(`${file}: not good: ${tell(found.says, "en")}`);
    return 1;
  }
  if (key !== undefined && found.keyId !== key) {
    console.log(`${file}: not good: it is signed by key ${found.keyId}, not by ${key}.`);
    return 1;
  }
  console.log(
    `${file}: ${found.entries} entries about ${read.data.subject} are good and stand in a signed chain.`,
  );
  for (const { kind, seq, hash } of read.data.entries)
    if (kind === "result" || kind === "amendment") console.log(`Row ${seq}, ${kind}, has the hash ${hash}`);
  console.log(`Signed by key ${found.keyId}: compare key and hash with those printed on the report.`);
  return 0;
}
