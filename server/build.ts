import { rmSync } from "node:fs";
import { build, type Plugin } from "esbuild";
import { keepDigest } from "./catalogue-files.ts";

/** Where the built program stands: `underhook.js`, its threads, and the parts that are loaded when they are needed. */
const outdir = "dist/server";

/** Leaves every package outside of what is built, but for these and what these rest on. */
function outside(inside: readonly string[]): Plugin {
  return {
    name: "outside",
    setup({ onLoad, onResolve }) {
      // messages of zod in fifty languages, of which none is ever shown
      onLoad({ filter: /[/]zod[/]v4[/]locales[/]index.js$/ }, () => ({ contents: "" }));
      onResolve({ filter: /^[^./]/ }, ({ path, importer, kind }) => {
        if (kind === "entry-point") return undefined;
        const isInside = inside.some((one) => path === one || path.startsWith(`${one}/`));
        return isInside || importer.includes("node_modules") ? undefined : { path, external: true };
      });
    },
  };
}

rmSync(outdir, { recursive: true, force: true });
await build({
  entryPoints: [
    "server/underhook.ts",
    "server/compute/compute-worker.ts",
    "server/ledger/sqlite-worker.ts",
    "server/reports/print-worker.ts",
    "server/cli/answering-thread.ts",
  ],
  outdir,
  entryNames: "[name]",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  sourcemap: true,
  minifyWhitespace: true,
  // these are whole in JavaScript; what they do not need here stays out, and a start reads a few files in place of hundreds
  plugins: [
    outside([
      "zod",
      "kysely",
      "preact",
      "preact-render-to-string",
      "d3-scale",
      "d3-shape",
      "intl-messageformat",
    ]),
  ],
  // data that people read and correct stays in its own files
  external: ["./server/metals/data/*.json", "./views/messages/*.json"],
  logLevel: "warning",
});
// catalogues that cannot be used fail the build
keepDigest();
