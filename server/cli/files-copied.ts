import { type Code, message } from "../../calibration/message.ts";
import { tell } from "../../views/messages/tell.ts";
import type { FilesFound } from "../ledger/named-files.ts";

/** Says how many photos or printed reports came along; 0 when all did, 1 when one is missing or was changed. */
export function toldOfCopied(code: Code, { count, wrong }: FilesFound): number {
  if (count > 0) console.log(tell(message(code, { good: count - wrong.length, count }), "en"));
  for (const fault of wrong) console.log(tell(message("ledger.files.not-copied", { fault }), "en"));
  return wrong.length === 0 ? 0 : 1;
}
