import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds package.json, whether the program runs from source or from its build. */
export const programFolder = folderAbove(dirname(fileURLToPath(import.meta.url)));

/** The built program, as `underhook` starts it. */
export const builtProgram = join(programFolder, "dist", "server", "underhook.js");

function folderAbove(folder: string): string {
  if (existsSync(join(folder, "package.json"))) return folder;
  const above = dirname(folder);
  if (above === folder)
    throw new Error("Underhook's own folder was not found: no package.json above the program.");
  return folderAbove(above);
}
