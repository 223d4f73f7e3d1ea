import type { Code } from "../../calibration/message.ts";
import { copyNames } from "../ledger/customer-names.ts";
import { copyFiles, type FilesBeside } from "../ledger/named-files.ts";
import { photoFiles } from "../photos/photo-folder.ts";
import { reportFiles } from "../reports/report-folder.ts";
import type { Voice } from "./command.ts";

const beside: readonly (readonly [FilesBeside, Code])[] = [
  [photoFiles, "photo.copied"],
  [reportFiles, "report.files-copied"],
];

/** Copies names of customers, photos and printed reports along with their ledger and says how many; 0 when all came, 1 when one is missing or was changed. */
export async function copyAlong(
  from: string,
  to: string,
  say: Voice,
  { over }: { over: boolean },
): Promise<number> {
  await copyNames(from, to, { over });
  let status = 0;
  for (const [kind, code] of beside) {
    const { count, wrong } = await copyFiles(kind, from, to, () => new Date());
    if (count > 0) say.out(code, { good: count - wrong.length, count });
    for (const fault of wrong) say.out("ledger.files.not-copied", { fault });
    if (wrong.length > 0) status = 1;
  }
  return status;
}
