import { rmSync } from "node:fs";
import { build } from "esbuild";
import { keepDigest } from "./catalogue-files.ts";

/** Where the built program stands: `underhook.js`, its threads, and the parts that are loaded when they are needed. */
const outdir = "dist/server";

rmSync(outdir, { recursive: true, force: true });
await build({
  entryPoints: ["server/underhook.ts", "server/compute/compute-worker.ts", "server/cli/answering-thread.ts"],
  outdir,
  entryNames: "[name]",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  sourcemap: true,
  packages: "external",
  // data that people read and correct stays in its own files
  external: ["./server/metals/data/*.json", "./views/messages/*.json"],
  logLevel: "warning",
});
// catalogues that cannot be used fail the build
keepDigest();
