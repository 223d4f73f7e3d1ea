import { Refusal } from "../../calibration/refusal.ts";
import { restore } from "../ledger/backup.ts";
import { ledgerFile } from "../ledger/data-folder.ts";
import { command } from "./command.ts";
import { copyAlong } from "./files-copied.ts";
import { givenLedger, ledgerOptions } from "./ledger-for-reading.ts";

const usage = {
  name: "restore",
  options: { ...ledgerOptions, until: { type: "string" } },
  takesArguments: true,
} as const;

/** `underhook restore`: 0 when the ledger is in place, 1 when the backup is damaged, 2 otherwise. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values, positionals, say }) => {
    const [from] = positionals;
    if (from === undefined) throw new Refusal("cli.restore.no-backup");
    const file = givenLedger(values) ?? ledgerFile();
    const { entries, movedAway } = await restore(from, file, new Date().toISOString(), values.until);
    say.out("cli.restore.done", { file, entries, from });
    if (movedAway !== null) say.out("cli.restore.moved", { file: movedAway });
    return copyAlong(from, file, say, { over: false });
  });
