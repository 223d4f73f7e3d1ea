import { defineConfig } from "vitest/config";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    globalSetup: ["test/setup/build.ts"],
    setupFiles: ["test/setup/chance.ts"],
    reporters: ["default", "./test/setup/closing-line.ts"],
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["test/**/*.test.{ts,tsx}"],
          exclude: ["test/**/*.serial.test.ts", "test/**/*.browser.test.ts"],
          // One project carries the benchmarks, so that each runs once.
          benchmark: { include: ["test/**/*.bench.ts"] },
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: "serial",
          include: ["test/**/*.serial.test.ts"],
          benchmark: { include: [] },
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["test/**/*.browser.test.ts"],
          benchmark: { include: [] },
          globalSetup: ["test/setup/chromium.ts"],
          testTimeout: 90_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
