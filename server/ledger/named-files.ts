import { copyFile, mkdir } from "node:fs/promises";
import { join } from "node:path";
import type { Message } from "../../calibration/message.ts";
import { readBeside } from "./file-beside.ts";
import type { Ledger } from "./ledger.ts";
import { openLedger } from "./open-ledger.ts";

/** A file that the ledger names by its SHA-256. */
export interface NamedFile {
  name: string;
  hash: string;
}

/** A kind of thing whose files lie beside a ledger: photos, printed reports. */
export interface FilesBeside {
  folder(ledgerFile: string): string;
  /** everything of the kind that a ledger names, each with its files, oldest first */
  named(ledger: Ledger): Promise<readonly (readonly NamedFile[])[]>;
  fault(found: "missing" | "changed", name: string, folder: string): Message;
}

/** How many things of a kind a ledger names, and what is wrong with those of which a file is missing or was changed. */
export interface FilesFound {
  count: number;
  wrong: Message[];
}

/** The first of the files that is not the one the ledger names; null when all are there. */
export async function faultOf(
  { fault }: Pick<FilesBeside, "fault">,
  folder: string,
  files: readonly NamedFile[],
): Promise<Message | null> {
  for (const { name, hash } of files) {
    const found = await readBeside(folder, name, hash);
    if (typeof found === "string") return fault(found, name, folder);
  }
  return null;
}

/** Looks at every file of a kind in a folder. */
export async function verifyFiles(kind: FilesBeside, ledger: Ledger, folder: string): Promise<FilesFound> {
  const named = await kind.named(ledger);
  const faults = await inTurn(named, (files) => faultOf(kind, folder, files));
  return { count: named.length, wrong: faults.filter((one) => one !== null) };
}

/**
 * Copies what a ledger names from beside one file to beside another: with a backup and with what is restored from it.
 * What is missing or was changed is named and does not keep the others back.
 */
export async function copyFiles(
  kind: FilesBeside,
  from: string,
  to: string,
  now: () => Date,
): Promise<FilesFound> {
  const ledger = await openLedger({ file: to, now, bench: "copy", readOnly: true });
  try {
    const [source, target] = [kind.folder(from), kind.folder(to)];
    const named = await kind.named(ledger);
    if (named.length > 0) await mkdir(target, { recursive: true, mode: 0o700 });
    const faults = await inTurn(named, async (files) => {
      const fault = await faultOf(kind, source, files);
      if (fault === null && source !== target)
        for (const { name } of files) await copyFile(join(source, name), join(target, name));
      return fault;
    });
    return { count: named.length, wrong: faults.filter((one) => one !== null) };
  } finally {
    await ledger.close();
  }
}

/** One after the other: a folder may hold thousands. */
async function inTurn<In, Out>(all: readonly In[], does: (one: In) => Promise<Out>): Promise<Out[]> {
  const done: Out[] = [];
  for (const one of all) done.push(await does(one));
  return done;
}
