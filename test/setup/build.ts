import { execFileSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const sources = ["calibration", "drivers", "server", "views"];
const settings = ["package.json", "tsconfig.json", "tsconfig.build.json"];
/** Written by every build. */
const built = join("dist", ".tsbuildinfo");

/** The command line and the worker are tested as they are shipped: built before every run, when a source has changed. */
export default function build(): void {
  const files = sources.flatMap((folder) => [
    folder,
    ...readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
  ]);
  const newest = Math.max(...[...files, ...settings].map(changedMs));
  if (newest < changedMs(built)) return;
  execFileSync("npm", ["run", "build", "--silent"], { stdio: "inherit" });
}

/** When a file was last changed, ms; -Infinity for none. */
function changedMs(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Number.NEGATIVE_INFINITY;
}
