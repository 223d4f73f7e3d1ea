import type { Reporter, TestModule } from "vitest/node";

/**
 * Ends the run with `N passed, N failed`, counted from the runner's own report. A file that could not be
 * loaded is a failure, and so is a skipped test: what cannot run must say why by failing.
 */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0;
    let failed = 0;
    for (const module of modules) {
      let failedHere = 0;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === "passed") passed += 1;
        else failedHere += 1;
        if (state === "skipped" || state === "pending") {
          console.log(`not run, counted as failed: ${test.fullName}`);
          process.exitCode = 1;
        }
      }
      if (failedHere === 0 && module.state() === "failed") failedHere = 1;
      failed += failedHere;
    }
    // Printed last of all: other reporters still write after this hook.
    process.once("exit", () => console.log(`${passed} passed, ${failed} failed`));
  }
}
