import { join } from "node:path";
import { backUp } from "../ledger/backup.ts";
import { dataFolder, ledgerFile } from "../ledger/data-folder.ts";
import { command } from "./command.ts";
import { copyAlong } from "./files-copied.ts";
import { givenLedger, ledgerOptions } from "./ledger-for-reading.ts";

const usage = { name: "backup", options: ledgerOptions, takesArguments: true } as const;

/** `underhook backup`: 0 when the copy is made and good, 1 when the ledger is damaged, 2 otherwise. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values, positionals, say }) => {
    const stamp = new Date().toISOString().replaceAll(":", "-");
    const [target = join(values.data ?? dataFolder(), "backups", `ledger-${stamp}.sqlite`)] = positionals;
    const file = givenLedger(values) ?? ledgerFile();
    say.out("cli.backup.done", { file: target, ...(await backUp(file, target)) });
    return copyAlong(file, target, say, { over: true });
  });
