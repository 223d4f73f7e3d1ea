import { defineConfig } from "vitest/config";
import { whole } from "./test/setup/long-run.ts";
import LongestFirst from "./test/setup/longest-first.ts";

/** A run made whole takes ten times what its seeded part takes, and more beside other work. */
const patience = whole ? 40 : 1;

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    globalSetup: ["test/setup/night.ts", "test/setup/build.ts"],
    setupFiles: ["test/setup/chance.ts"],
    reporters: ["default", "./test/setup/closing-line.ts"],
    // Chromium, pseudo-terminals and processes are waited for: four workers keep two cores busy.
    maxWorkers: 4,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["test/**/*.test.{ts,tsx}"],
          exclude: ["test/**/*.serial.test.ts", "test/**/*.browser.test.ts"],
          // One thread runs many files and loads each module once; a file leaves the globals as it found them.
          pool: "threads",
          isolate: false,
          globalSetup: ["test/setup/peers.ts"],
          testTimeout: 30_000 * patience,
          hookTimeout: 30_000 * patience,
        },
      },
      {
        extends: true,
        test: {
          name: "serial",
          include: ["test/**/*.serial.test.ts"],
          isolate: false,
          testTimeout: 60_000 * patience,
          hookTimeout: 60_000 * patience,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["test/**/*.browser.test.ts"],
          globalSetup: ["test/setup/chromium.ts"],
          isolate: false,
          testTimeout: 90_000 * patience,
          hookTimeout: 90_000 * patience,
        },
      },
    ],
  },
});
