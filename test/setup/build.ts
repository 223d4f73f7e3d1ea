import { execFileSync } from "node:child_process";
import { readdirSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { buildSync } from "esbuild";

const sources = ["calibration", "drivers", "server", "views"];
const settings = ["package.json", "tsconfig.json"];
/** Programs that tests start by the hundred. */
const processes = ["test/server/ledger/bench-process.mjs", "test/server/ledger/scale-process.mjs"];
/** The thread they work in. */
const thread = "server/ledger/sqlite-worker.ts";
/** Written when a build has succeeded; as old as its start. */
const built = join("dist", ".built");

/** The command line and the worker are tested as they are shipped: built before every run, when a source has changed. */
export default function build(): void {
  const files = sources.flatMap((folder) => [
    folder,
    ...readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
  ]);
  const newest = Math.max(...[...files, ...settings, ...processes].map(changedMs));
  if (newest < changedMs(built)) return;
  rmSync(built, { force: true });
  const start = new Date();
  execFileSync("npm", ["run", "build", "--silent"], { stdio: "inherit" });
  buildSync({
    entryPoints: [...processes, thread],
    outdir: join("dist", "test"),
    entryNames: "[name]",
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node20.19",
    packages: "external",
    external: ["./server/metals/data/*.json", "./views/messages/*.json"],
  });
  writeFileSync(built, "");
  // a source that changes meanwhile is newer than this
  utimesSync(built, start, start);
}

/** When a file was last changed, ms; -Infinity for none. */
function changedMs(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Number.NEGATIVE_INFINITY;
}
