import { defineConfig } from "vitest/config";

/** The tests that have to notice a change: one thread, each module loaded once, and time for code that counts its steps. */
export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    setupFiles: ["test/setup/chance.ts"],
    include: (process.env.MUTATION_TESTS ?? "").split(" "),
    isolate: false,
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
