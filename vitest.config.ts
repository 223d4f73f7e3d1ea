import { defineConfig } from "vitest/config";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    globalSetup: ["test/setup/build.ts"],
    reporters: ["default", "./test/setup/closing-line.ts"],
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["test/**/*.test.{ts,tsx}"],
          exclude: ["test/**/*.serial.test.ts", "test/**/*.browser.test.ts"],
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: { name: "serial", include: ["test/**/*.serial.test.ts"], testTimeout: 60_000 },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["test/**/*.browser.test.ts"],
          globalSetup: ["test/setup/chromium.ts"],
          testTimeout: 90_000,
          fileParallelism: false,
        },
      },
    ],
    benchmark: { include: ["test/**/*.bench.ts"] },
  },
});
