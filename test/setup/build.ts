import { execFileSync } from "node:child_process";
import { readdirSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const sources = ["calibration", "drivers", "server", "views"];
const settings = ["package.json", "tsconfig.json", "tsconfig.build.json"];
/** Written when a build has succeeded; as old as its start. */
const built = join("dist", ".built");

/** The command line and the worker are tested as they are shipped: built before every run, when a source has changed. */
export default function build(): void {
  const files = sources.flatMap((folder) => [
    folder,
    ...readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
  ]);
  const newest = Math.max(...[...files, ...settings].map(changedMs));
  if (newest < changedMs(built)) return;
  rmSync(built, { force: true });
  const start = new Date();
  execFileSync("npm", ["run", "build", "--silent"], { stdio: "inherit" });
  writeFileSync(built, "");
  // a source that changes meanwhile is newer than this
  utimesSync(built, start, start);
}

/** When a file was last changed, ms; -Infinity for none. */
function changedMs(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Number.NEGATIVE_INFINITY;
}
